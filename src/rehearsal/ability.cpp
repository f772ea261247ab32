#include "rehearsal/ability.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "body/effort.hpp"

namespace repwright::rehearsal {

const domain::Limit* forbidding(const Ability& ability, const domain::Movement& movement) {
  if (ability.request.rule == FitRule::AsWritten) return nullptr;
  const auto at = std::ranges::find_if(
      ability.limits, [&](const domain::Limit& limit) { return forbidden(movement, limit.limit); });
  return at == ability.limits.end() ? nullptr : &*at;
}

const domain::EquipmentId* lacking(const Ability& ability, const domain::Movement& movement) {
  const auto& gone = ability.request.gone;
  if (ability.request.rule == FitRule::AsWritten) return nullptr;
  const auto at = std::ranges::find_if(gone, [&](const domain::EquipmentId& id) {
    return std::ranges::find(movement.equipment, id) != movement.equipment.end();
  });
  return at == gone.end() ? nullptr : &*at;
}

domain::Unit work_unit(const domain::Movement& movement, domain::Unit asked) {
  return movement.pace.contains(asked) ? asked : movement.default_unit;
}

double best_set(const Ability& ability, const domain::Movement& movement, domain::Unit unit, double load) {
  const auto& constants = ability.request.constants;
  const body::EffortSpec spec = body::effort_spec(movement, work_unit(movement, unit), load, constants);
  return body::effort_of(spec, ability.body, constants).best;
}

double load_for_reps(const Ability& ability, const domain::Movement& movement, double reps) {
  const double step = load_step_of(movement);
  if (step <= 0) return 0;
  int low = 0;  // in steps: this much is light enough
  int high = static_cast<int>(std::ceil(400 / step));
  while (high - low > 1) {
    const int middle = (low + high) / 2;
    (best_set(ability, movement, domain::Unit::Reps, middle * step) >= reps ? low : high) = middle;
  }
  return low * step;
}

double load_step_of(const domain::Movement& movement) {
  static constexpr std::array<std::pair<std::string_view, double>, 5> steps{
      {{"barbell", 2.5}, {"dumbbell", 2.5}, {"kettlebell", 4}, {"sandbag", 1}, {"med-ball", 1}}};
  for (const auto& [kit, step] : steps)
    if (std::ranges::find(movement.equipment, kit, &domain::EquipmentId::text) != movement.equipment.end())
      return step;
  return movement.typical_load ? 1 : 0;
}

}  // namespace repwright::rehearsal
