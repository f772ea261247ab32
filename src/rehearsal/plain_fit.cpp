#include "rehearsal/plain_fit.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <string>

#include <fmt/format.h>

#include "base/require.hpp"
#include "domain/ladder.hpp"
#include "rehearsal/ability.hpp"
#include "rehearsal/amounts.hpp"
#include "rehearsal/board_items.hpp"
#include "rehearsal/loads.hpp"
#include "rehearsal/versions.hpp"

namespace repwright::rehearsal {

namespace {

using domain::FittedItem;
using domain::Movement;

/// Who has an easier version of their own and, as written, a largest set of less than this share of what one
/// round asks, does their own: the written one would be a session of ones and twos.
constexpr double least_share_of_a_set = 0.5;

constexpr const char* as_usual = "as usual";
constexpr const char* none_as_written = "no full rep as written";
constexpr const char* few_as_written = "less than half of a set at once as written";

/// A set of more than this many times the best set belongs to an easier level.
constexpr double most_breaks_of_a_level = 3;

/// The board's lines for one person, one after the other.
class PersonFit {
 public:
  PersonFit(const Ability& ability, const std::vector<ItemAt>& lines) : ability_(ability), lines_(lines) {}
  domain::FittedPerson fit();

 private:
  FittedItem fit_line(const ItemAt& line);
  std::optional<int> level_at(const ItemAt& line);
  int best_level(const domain::Block& block) const;
  bool level_fits(const domain::Block& block, int level) const;
  const Movement* written(const domain::Item& item, std::optional<int> level) const;
  void choose_version(FittedItem& fitted, const ItemAt& line, const Movement& movement);
  const Movement* usual_easier(const Movement& movement) const;
  Version easier_for_more(const ItemAt& line, const Movement& movement) const;
  Version said_version(const ItemAt& line, const Movement& movement) const;
  void take(FittedItem& fitted, const ItemAt& line, const Movement& movement, const Version& version);
  std::string reason_for(const Version& version, const domain::Limit* limit,
                         const domain::EquipmentId* want) const;
  void take_load(FittedItem& fitted, const ItemAt& line, const Movement& version, const Movement& movement);
  void remember_best(const FittedItem& fitted, const ItemAt& line);

  const Ability& ability_;
  const std::vector<ItemAt>& lines_;
  std::map<domain::BlockId, int> levels_;
  std::map<domain::MovementId, double> today_best_;  // kg, from the building parts so far
};

const Movement* PersonFit::written(const domain::Item& item, std::optional<int> level) const {
  const auto& catalogue = ability_.request.catalogue;
  if (level && item.scale && item.scale->by_level && !item.scale->options.empty()) {
    const auto last = item.scale->options.size() - 1;
    const auto at = std::min(static_cast<std::size_t>(*level), last);
    if (const Movement* own = catalogue.find(item.scale->options[at].movement)) return own;
  }
  return item.movement ? catalogue.find(*item.movement) : nullptr;
}

bool PersonFit::level_fits(const domain::Block& block, int level) const {
  return std::ranges::all_of(lines_, [&](const ItemAt& line) {
    if (!line.item || line.levels != &block) return true;
    const Movement* movement = written(*line.item, level);
    if (!movement) return true;
    const double set = largest_set(resolved_amount(ability_, *line.item, level));
    return passes(ability_, *movement, std::max(1.0, set / most_breaks_of_a_level));
  });
}

int PersonFit::best_level(const domain::Block& block) const {
  const int count = static_cast<int>(block.levels.size());
  if (ability_.request.rule == FitRule::AsWritten) return 0;
  for (int level = 0; level < count; ++level)
    if (level_fits(block, level)) return level;
  return count - 1;
}

std::optional<int> PersonFit::level_at(const ItemAt& line) {
  if (!line.levels) return std::nullopt;
  const auto known = levels_.find(line.levels->id);
  if (known != levels_.end()) return known->second;
  const int level = best_level(*line.levels);
  levels_.emplace(line.levels->id, level);
  return level;
}

bool timed_by_the_clock(const domain::Block& block) {
  return block.kind == domain::BlockKind::Circuit ||
         (block.kind == domain::BlockKind::Intervals && block.work.has_value());
}

void PersonFit::take_load(FittedItem& fitted, const ItemAt& line, const Movement& version,
                          const Movement& movement) {
  LoadRequest wish{line, version, &movement, level_at(line), largest_set(fitted.amount), std::nullopt};
  if (const auto best = today_best_.find(version.id); best != today_best_.end())
    wish.today_best = best->second;
  const LoadChoice choice = choose_load(ability_, wish);
  fitted.load = choice.load;
  fitted.set_loads = choice.set_loads;
  fitted.felt_load = choice.felt && choice.load.has_value();
  if (choice.lighter && fitted.load)
    fitted.swapped_for = fmt::format("lighter: {:g} kg", std::round(fitted.load->si() * 10) / 10);
}

void PersonFit::take(FittedItem& fitted, const ItemAt& line, const Movement& movement,
                     const Version& version) {
  fitted.movement = version.movement->id;
  if (timed_by_the_clock(*line.block) && fitted.unit == domain::Unit::Seconds) {
    fitted.score_factor = version.factor;
  } else {
    const Exchange traded = exchange(movement, fitted.unit, *version.movement);
    const double whole = traded.unit == domain::Unit::Metres && traded.factor != 1 ? 10 : 1;
    fitted.amount = times(fitted.amount, traded.factor * version.factor, whole);
    fitted.score_factor = version.factor * traded.factor;
    fitted.unit = traded.unit;
  }
  take_load(fitted, line, *version.movement, movement);
}

/// What the person is said to have done for the movement; no movement if it is not known.
Version PersonFit::said_version(const ItemAt& line, const Movement& movement) const {
  if (!ability_.request.said) return {};
  const auto said = ability_.request.said->find(ability_.person.id);
  if (said == ability_.request.said->end()) return {};
  const auto done = [&](const Movement& version) {
    return std::ranges::find(said->second, version.id) != said->second.end();
  };
  if (done(movement)) return {&movement, 1};
  for (const Version& version : stand_ins(ability_, movement, line.item))
    if (done(*version.movement)) return version;
  return {};
}

void PersonFit::choose_version(FittedItem& fitted, const ItemAt& line, const Movement& movement) {
  if (ability_.request.rule == FitRule::AsWritten) return take(fitted, line, movement, {&movement, 1});
  if (const Version done = said_version(line, movement); done.movement)
    return take(fitted, line, movement, done);
  if (line.item->personal_version) {
    const Movement* own = standing_version(ability_, movement);
    if (own && passes(ability_, *own, 1)) return take(fitted, line, movement, {own, 1});
  }
  const domain::Limit* limit = forbidding(ability_, movement);
  const domain::EquipmentId* want = lacking(ability_, movement);
  if (!limit && !want) {
    FittedItem as_written = fitted;
    take(as_written, line, movement, {&movement, 1});
    const double load = as_written.load ? as_written.load->si() * as_written.implements : 0;
    const double best = best_set(ability_, movement, as_written.unit, load);
    if (best < least_share_of_a_set * largest_set(fitted.amount))
      if (const Movement* own = usual_easier(movement)) {
        take(fitted, line, movement, {.movement = own, .standing = true});
        fitted.swapped_for = as_usual;
        return;
      }
    if (fitted.unit == domain::Unit::Reps && best < enough_at_once(fitted.unit, largest_set(fitted.amount)))
      if (const Version easier = easier_for_more(line, movement); easier.movement) {
        take(fitted, line, movement, easier);
        fitted.swapped_for = best < 1 ? none_as_written : few_as_written;
        return;
      }
    if (best >= 1) {
      fitted = as_written;
      return;
    }
  }
  const StandInRule rule{largest_set(fitted.amount), !limit && !want};
  const Version version = first_passing(ability_, stand_ins(ability_, movement, line.item), rule);
  if (!limit && want) fitted.lacking = *want;
  if (!version.movement) {
    fitted.amount = 0.0;
    fitted.swapped_for = "rest instead: no version fits";
    return;
  }
  take(fitted, line, movement, version);
  fitted.swapped_for = reason_for(version, limit, want);
}

/// The first of the board's options and the movement's easier versions of which the person has enough.
Version PersonFit::easier_for_more(const ItemAt& line, const Movement& movement) const {
  std::vector<Version> easier = stand_ins(ability_, movement, line.item);
  std::erase_if(easier, [](const Version& version) { return version.alike || version.standing; });
  for (const Version& version : easier)
    if (passes(ability_, *version.movement, plenty_at_once * version.factor)) return version;
  return {};
}

/// The person's standing version where it is an easier one of the movement and passes, or null.
const Movement* PersonFit::usual_easier(const Movement& movement) const {
  const Movement* own = standing_version(ability_, movement);
  if (own == nullptr || domain::steps_down(ability_.request.catalogue, movement.id, own->id) == 0)
    return nullptr;
  return passes(ability_, *own, 1) ? own : nullptr;
}

/// Why the person does `version` instead: a limit before want of places before want of reps.
std::string PersonFit::reason_for(const Version& version, const domain::Limit* limit,
                                  const domain::EquipmentId* want) const {
  if (limit) return limit->action.empty() ? version.movement->name : limit->action;
  if (want) {
    const domain::Equipment* equipment = ability_.request.catalogue.find(*want);
    return fmt::format("none today: {}", equipment ? equipment->name : want->text);
  }
  return version.standing ? as_usual : none_as_written;
}

/// What the person will have built up to, for 'percent of today'.
void PersonFit::remember_best(const FittedItem& fitted, const ItemAt& line) {
  if (line.block->kind == domain::BlockKind::Build && fitted.load)
    today_best_[fitted.movement] = fitted.load->si() * fitted.implements;
}

FittedItem PersonFit::fit_line(const ItemAt& line) {
  const domain::Item& item = *line.item;
  const std::optional<int> level = level_at(line);
  FittedItem fitted;
  fitted.step = item.step;
  fitted.unit = item.unit;
  fitted.amount = resolved_amount(ability_, item, level);
  fitted.implements = item.implements;
  fitted.each_side = item.each_side;
  if (!item.heights.empty()) {
    const std::size_t tier = item.heights.size() > 1 ? static_cast<std::size_t>(tier_of(ability_, item)) : 0;
    fitted.height = item.heights[std::min(tier, item.heights.size() - 1)];
  }
  if (const Movement* movement = written(item, level)) choose_version(fitted, line, *movement);
  if (item.gate && item.gate->movement)
    if (const Movement* gate = allowed_version(ability_, *item.gate->movement)) fitted.gate = gate->id;
  if (item.second_station && fitted.movement == item.movement) {
    const Movement* other = ability_.request.catalogue.find(*item.second_station);
    if (other && passes(ability_, *other, 1)) fitted.second_station = other->id;
  }
  remember_best(fitted, line);
  return fitted;
}

domain::FittedPerson PersonFit::fit() {
  domain::FittedPerson fitted;
  fitted.person = ability_.person.id;
  for (const ItemAt& line : lines_) {
    fitted.items.push_back(line.item ? fit_line(line) : FittedItem{});
    if (line.item && line.levels && !fitted.level) fitted.level = level_at(line);
  }
  return fitted;
}

}  // namespace

domain::FittedBoard plain_fit(const PlainFitRequest& request) {
  base::require(request.people.size() == request.bodies.size(), "every person has a body");
  const std::vector<ItemAt> lines = items_by_step(request.board);
  domain::FittedBoard fitted;
  fitted.board = request.board;
  for (std::size_t i = 0; i < request.people.size(); ++i) {
    const domain::Person& person = request.people[i];
    const Ability ability{request, person, request.bodies[i], limits_on(person, request.date)};
    fitted.people.push_back(PersonFit(ability, lines).fit());
  }
  return fitted;
}

}  // namespace repwright::rehearsal
