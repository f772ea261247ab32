#include "app/class_brief.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "app/who_comes.hpp"

namespace repwright::app {
namespace {

using std::chrono::sys_days;

constexpr std::chrono::weeks away_for_long{3};

/// The days before `day` on which each person scored.
std::map<domain::PersonId, std::set<sys_days>> days_of(const std::vector<domain::ScoreEntry>& scores,
                                                       sys_days day) {
  std::map<domain::PersonId, std::set<sys_days>> days;
  for (const domain::ScoreEntry& entry : scores)
    if (const sys_days date{entry.date}; date < day) days[entry.person].insert(date);
  return days;
}

Standing standing_of(const std::set<sys_days>& came, sys_days day) {
  if (came.empty()) return Standing::First;
  return day - *came.rbegin() >= away_for_long ? Standing::Back : Standing::Regular;
}

std::vector<Comer> comers_of(const Attendance& attendance, const GymKnowledge& gym,
                             const domain::GymClass& gym_class) {
  const sys_days day = gym_class.date ? sys_days{*gym_class.date} : sys_days{};
  const auto days = days_of(gym.scores, day);
  std::vector<Comer> comers;
  for (std::size_t p = 0; p < attendance.people.size(); ++p) {
    Comer comer{.person = attendance.people[p], .late = attendance.late[p], .last_came = {}};
    const auto known = days.find(comer.person.id);
    const std::set<sys_days> came = known == days.end() ? std::set<sys_days>{} : known->second;
    comer.sessions = static_cast<int>(came.size());
    if (!came.empty()) comer.last_came = std::chrono::year_month_day(*came.rbegin());
    if (!days.empty()) comer.standing = standing_of(came, day);
    comers.push_back(std::move(comer));
  }
  return comers;
}

auto size_of(const SetOut& lot) {
  return std::tuple(lot.name, lot.mass, lot.height);
}

std::vector<SetOut> set_out_of(const std::vector<rehearsal::KitNeed>& needs,
                               const domain::Catalogue& catalogue) {
  std::vector<SetOut> lots;
  for (const rehearsal::KitNeed& need : needs) {
    if (need.needed == 0) continue;
    const domain::Equipment* equipment = catalogue.find(need.equipment);
    const SetOut lot{.equipment = need.equipment,
                     .name = equipment ? equipment->name : need.equipment.text,
                     .mass = need.mass,
                     .height = need.height,
                     .needed = need.needed,
                     .available = need.available};
    const auto same = std::ranges::find(lots, size_of(lot), size_of);
    if (same == lots.end())
      lots.push_back(lot);
    else
      same->needed = std::max(same->needed, lot.needed);
  }
  std::ranges::sort(lots, [](const SetOut& a, const SetOut& b) { return size_of(a) < size_of(b); });
  return lots;
}

}  // namespace

base::Result<ClassBrief> class_brief(const GymAtHand& at_hand, const std::string& class_id,
                                     const std::stop_token& stop) {
  const OpenGym& gym = at_hand.gym();
  const auto known = gym.classes.find(class_id);
  if (known == gym.classes.end())
    return base::failure(base::ErrorCode::NotFound, "no class is called `" + class_id + "`");
  const domain::GymClass& gym_class = known->second;
  const auto board = gym.knowledge.boards.find(gym_class.board_id);
  if (board == gym.knowledge.boards.end())
    return base::failure(base::ErrorCode::NotFound, "no board is called `" + gym_class.board_id + "`");
  const auto attendance = who_comes(gym.people, gym_class, std::nullopt);
  if (!attendance) return tl::unexpected(attendance.error());
  ClassBrief brief{.people = comers_of(*attendance, gym.knowledge, gym_class), .set_out = {}};

  const board::Reading reading = at_hand.read(board->second);
  const WhatIf as_it_is{.class_id = class_id, .heads = {}, .out = {}, .runs = 1, .stop = stop};
  const auto rehearsed = rehearse_what_if(at_hand, reading, as_it_is);
  if (rehearsed)
    brief.set_out = set_out_of(rehearsed->kit, gym.knowledge.catalogue);
  else if (rehearsed.error().code != base::ErrorCode::Invalid)
    return tl::unexpected(rehearsed.error());
  return brief;
}

}  // namespace repwright::app
