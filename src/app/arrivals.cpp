#include "app/arrivals.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "app/gym_lookup.hpp"
#include "domain/people_search.hpp"

namespace repwright::app {
namespace {

using base::ErrorCode;
using base::Result;
using domain::GymClass;
using domain::PersonId;

/// On whom the class counts: its arrivals, else who booked, else everybody.
std::vector<domain::Arrival> counted_on(const OpenGym& gym, const GymClass& gym_class) {
  if (!gym_class.arrivals.empty()) return gym_class.arrivals;
  std::vector<domain::Arrival> all;
  all.reserve(gym_class.booked.empty() ? gym.people.size() : gym_class.booked.size());
  for (const PersonId& id : gym_class.booked) all.push_back({id, {}});
  if (all.empty())
    for (const domain::Person& person : gym.people) all.push_back({person.id, {}});
  return all;
}

auto find_in(const std::vector<domain::Arrival>& list, const PersonId& person) {
  return std::ranges::find(list, person, &domain::Arrival::person);
}

bool works_on(const domain::Item& item, const domain::Catalogue& catalogue, const std::string& pattern) {
  const domain::Movement* movement = item.movement ? catalogue.find(*item.movement) : nullptr;
  return movement != nullptr && std::ranges::find(movement->patterns, pattern) != movement->patterns.end();
}

bool has_pattern(const domain::Block& block, const domain::Catalogue& catalogue, const std::string& pattern) {
  const auto works = [&](const domain::Item& item) { return works_on(item, catalogue, pattern); };
  return std::ranges::any_of(block.items, works) ||
         std::ranges::any_of(block.slots,
                             [&](const auto& slot) { return std::ranges::any_of(slot, works); }) ||
         std::ranges::any_of(block.children, [&](const domain::Block& child) {
           return has_pattern(child, catalogue, pattern);
         });
}

/// What a returner halves first: pulls, then pushes, which leave the sorest arms after a long time away.
std::string_view halved(const domain::Board& board, const domain::Catalogue& catalogue) {
  const auto has = [&](const std::string& pattern) {
    return std::ranges::any_of(
        board.blocks, [&](const domain::Block& block) { return has_pattern(block, catalogue, pattern); });
  };
  if (has("pull")) return "half the pulls";
  return has("push") ? "half the pushes" : "half the counts";
}

/// Everybody on any list of the class, each once.
Attendance everybody_of(const OpenGym& gym, const GymClass& gym_class) {
  Attendance all;
  std::set<PersonId> seen;
  const std::vector<domain::Arrival> counted = counted_on(gym, gym_class);
  const auto add = [&](const PersonId& id) {
    const domain::Person* known = domain::find_person(gym.people, id);
    if (known == nullptr || !seen.insert(id).second) return;
    const auto arrival = find_in(counted, id);
    all.people.push_back(*known);
    all.late.push_back(arrival == counted.end() ? base::Duration{} : arrival->late);
  };
  for (const PersonId& id : gym_class.booked) add(id);
  for (const domain::Arrival& each : counted) add(each.person);
  for (const PersonId& id : gym_class.walk_ins) add(id);
  return all;
}

std::vector<std::string> told_of(const Comer& comer, const GymClass& gym_class, const board::Reading& reading,
                                 const domain::Catalogue& catalogue) {
  std::vector<std::string> told;
  if (std::string action = standing_action(comer, gym_class, reading.board, catalogue); !action.empty())
    told.push_back(std::move(action));
  for (const domain::Limit& limit : domain::limits_on(comer.person, gym_class.date))
    told.push_back(limit.action.empty() ? "ask what they leave out today" : limit.action);
  return told;
}

}  // namespace

std::string standing_action(const Comer& comer, const GymClass& gym_class, const domain::Board& board,
                            const domain::Catalogue& catalogue) {
  if (comer.standing == Standing::First) return "first day: half the counts, effort 5 to 6";
  if (comer.standing != Standing::Back || !comer.last_came || !gym_class.date) return {};
  const auto away = std::chrono::sys_days{*gym_class.date} - std::chrono::sys_days{*comer.last_came};
  return fmt::format("back after {} days: {}", away.count(), halved(board, catalogue));
}

std::set<PersonId> seen_here(const std::vector<domain::KeptDoorLine>& door) {
  std::set<PersonId> here;
  for (const domain::KeptDoorLine& kept : door) {
    if (kept.line.act == domain::DoorAct::NotHere) here.erase(kept.line.person);
    if (kept.line.act == domain::DoorAct::Here) here.insert(kept.line.person);
  }
  return here;
}

Result<std::vector<Arriving>> arrivals(const GymAtHand& at_hand, const std::string& class_id,
                                       const std::set<PersonId>& here) {
  const OpenGym& gym = at_hand.gym();
  const auto known = class_called(gym, class_id);
  if (!known) return tl::unexpected(known.error());
  const GymClass& gym_class = **known;
  const auto board = gym.knowledge.boards.find(gym_class.board_id);
  const board::Reading reading = at_hand.read(board == gym.knowledge.boards.end() ? "" : board->second);
  const std::vector<domain::Arrival> counted = counted_on(gym, gym_class);
  std::vector<Arriving> out;
  for (Comer& comer : comers_of(everybody_of(gym, gym_class), gym.knowledge, gym_class)) {
    const PersonId id = comer.person.id;
    Arriving one{.comer = std::move(comer),
                 .state = find_in(counted, id) == counted.end() ? ArrivalState::Away
                          : here.contains(id)                   ? ArrivalState::Here
                                                                : ArrivalState::Expected,
                 .walk_in = std::ranges::find(gym_class.walk_ins, id) != gym_class.walk_ins.end(),
                 .told = {}};
    one.told = told_of(one.comer, gym_class, reading, gym.knowledge.catalogue);
    out.push_back(std::move(one));
  }
  return out;
}

Result<GymClass> ticked(const OpenGym& gym, GymClass gym_class, const ArrivalTick& tick) {
  std::vector<domain::Arrival> counted = counted_on(gym, gym_class);
  const std::vector<domain::Arrival> before = counted;
  const auto known = std::ranges::find(counted, tick.person, &domain::Arrival::person);
  if (tick.state == ArrivalState::Away)
    std::erase_if(counted, [&](const domain::Arrival& each) { return each.person == tick.person; });
  else if (known == counted.end())
    counted.push_back({tick.person, tick.late});
  else if (tick.state == ArrivalState::Here)
    known->late = tick.late;
  if (counted.empty())
    return base::failure(ErrorCode::Invalid, "somebody has to be in the class: nobody else is on its list");
  if (counted != before) gym_class.arrivals = std::move(counted);
  return gym_class;
}

Result<GymClass> list_closed(const OpenGym& gym, GymClass gym_class, const std::set<PersonId>& here) {
  std::vector<domain::Arrival> counted = counted_on(gym, gym_class);
  std::erase_if(counted, [&](const domain::Arrival& each) { return !here.contains(each.person); });
  if (counted.empty()) return base::failure(ErrorCode::Invalid, "nobody has been ticked as here yet");
  gym_class.arrivals = std::move(counted);
  return gym_class;
}

}  // namespace repwright::app
