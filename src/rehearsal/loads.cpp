#include "rehearsal/loads.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "rehearsal/amounts.hpp"

namespace repwright::rehearsal {

namespace {

/// A middle load is for whoever does half as many again as asked, within these bounds: nobody does 110 shared
/// swings in one go.
constexpr double least_to_spare = 7.5;
constexpr double most_to_spare = 15;
constexpr double usual_effort = 8;  // RPE of strength work that names none: two reps kept

bool same_kit(const domain::Movement& a, const domain::Movement& b) {
  static constexpr std::array<std::string_view, 5> loadable{"barbell", "kettlebell", "dumbbell", "med-ball",
                                                            "sandbag"};
  const auto uses = [](const domain::Movement& m, std::string_view kit) {
    return std::ranges::find(m.equipment, kit, &domain::EquipmentId::text) != m.equipment.end();
  };
  return a.id == b.id ||
         std::ranges::any_of(loadable, [&](std::string_view kit) { return uses(a, kit) && uses(b, kit); });
}

std::optional<base::Mass> written_load(const Ability& ability, const domain::Item& item,
                                       std::optional<int> level) {
  if (!item.loads || item.loads->masses.empty()) return std::nullopt;
  const auto& masses = item.loads->masses;
  std::size_t at = 0;
  if (item.loads->by_level)
    at = static_cast<std::size_t>(level.value_or(0));
  else if (masses.size() > 1)
    at = static_cast<std::size_t>(tier_of(ability, item));
  return masses[std::min(at, masses.size() - 1)];
}

base::Mass per_implement(double total, const domain::Item& item) {
  return base::Mass::from_si(total / std::max(1, item.implements));
}

/// Percent of a best in kg, on the steps of the kit, never below one step.
base::Mass share_of(double best, double percent, const LoadRequest& request) {
  const double step = std::max(0.5, load_step_of(request.movement));
  const double total = std::max(step, std::floor(best * percent / 100 / step) * step);
  return per_implement(total, *request.line.item);
}

LoadChoice by_share(const Ability& ability, const LoadRequest& request, const domain::LoadShare& share) {
  const bool today = share.of == domain::ShareOf::TodayBest && request.today_best;
  const double best = today ? *request.today_best : load_for_reps(ability, request.movement, 1);
  LoadChoice choice;
  if (share.percent.empty() || best <= 0) return choice;
  choice.felt = true;
  choice.load = share_of(best, share.percent.front(), request);
  if (share.percent.size() > 1)
    for (const double percent : share.percent) choice.set_loads.push_back(share_of(best, percent, request));
  return choice;
}

bool strength_work(const domain::Block& block) {
  using domain::BlockKind;
  return block.kind == BlockKind::Sets || block.kind == BlockKind::Superset ||
         block.kind == BlockKind::Build ||
         (block.kind == BlockKind::Every && block.score == domain::Score::Load);
}

std::optional<base::Mass> load_at_effort(const Ability& ability, const LoadRequest& request, double effort) {
  const double reps = std::max(1.0, request.set) + std::clamp(10 - effort, 0.0, 9.0);
  const double total = load_for_reps(ability, request.movement, reps);
  if (total <= 0) return std::nullopt;
  return per_implement(total, *request.line.item);
}

/// The usual middle load for whoever does half as many again as asked in one go, else the light one.
std::optional<base::Mass> usual_load(const Ability& ability, const LoadRequest& request) {
  const auto& usual = request.movement.typical_load;
  if (!usual) return std::nullopt;
  const domain::Unit unit = request.movement.default_unit;
  const double enough = std::clamp(1.5 * request.set, least_to_spare, most_to_spare);
  const bool strong = best_set(ability, request.movement, unit, usual->medium.si()) >= enough;
  return strong ? usual->medium : usual->light;
}

LoadChoice unwritten_load(const Ability& ability, const LoadRequest& request) {
  const auto felt = [](std::optional<base::Mass> load) { return LoadChoice{.load = load, .felt = true}; };
  const domain::Item& item = *request.line.item;
  if (item.load_step) {
    const auto last = load_at_effort(ability, request, usual_effort);
    return felt(last ? std::optional(*last + item.load_step->plus.value_or(base::Mass{})) : last);
  }
  if (!request.movement.typical_load || request.movement.default_unit != domain::Unit::Reps)
    return {.load = usual_load(ability, request)};
  if (item.effort) return felt(load_at_effort(ability, request, (item.effort->min + item.effort->max) / 2));
  if (strength_work(*request.line.block))
    return felt(load_at_effort(ability, request,
                               request.line.block->kind == domain::BlockKind::Build ? 10 : usual_effort));
  return {.load = usual_load(ability, request)};
}

/// The heaviest load of the movement's kit on the hall's shelf that is no heavier, else the lightest there
/// is; unchanged where the hall lists none of that kit.
std::optional<base::Mass> from_shelf(const Ability& ability, const domain::Movement& movement,
                                     std::optional<base::Mass> load) {
  static constexpr std::array<std::string_view, 4> whole{"kettlebell", "dumbbell", "med-ball", "sandbag"};
  if (!load || !ability.request.hall) return load;
  std::optional<base::Mass> lighter, lightest;
  for (const domain::KitLot& lot : ability.request.hall->kit) {
    const bool fits = std::ranges::find(whole, lot.equipment.text) != whole.end() &&
                      std::ranges::find(movement.equipment, lot.equipment) != movement.equipment.end();
    if (!fits || !lot.mass || lot.count < 1) continue;
    if (!lightest || *lot.mass < *lightest) lightest = lot.mass;
    if (*lot.mass <= *load && (!lighter || *lot.mass > *lighter)) lighter = lot.mass;
  }
  return lighter ? lighter : lightest ? lightest : load;
}

}  // namespace

LoadChoice choose_load(const Ability& ability, const LoadRequest& request) {
  const domain::Item& item = *request.line.item;
  const bool kept = !request.written || same_kit(request.movement, *request.written);
  LoadChoice choice;
  const std::optional<base::Mass> written = written_load(ability, item, request.level);
  if (written && kept) {
    choice.load = written;
    if (ability.request.rule == FitRule::AsWritten) return choice;
    const double total = written->si() * item.implements;
    const double enough = enough_at_once(item.unit, request.set);
    if (best_set(ability, request.movement, item.unit, total) >= enough) return choice;
    const double lighter = load_for_reps(ability, request.movement, std::max(plenty_at_once, request.set));
    if (lighter <= 0) return choice;
    choice.load = from_shelf(ability, request.movement, per_implement(std::min(lighter, total), item));
    choice.lighter = true;
    return choice;
  }
  if (item.load_share && kept) return by_share(ability, request, *item.load_share);
  choice = unwritten_load(ability, request);
  choice.load = from_shelf(ability, request.movement, choice.load);
  return choice;
}

}  // namespace repwright::rehearsal
