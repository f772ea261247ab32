#include "domain/catalogue.hpp"

#include <algorithm>

namespace repwright::domain {

bool Movement::counts_per_side() const {
  return count_rule.starts_with("Per side") || count_rule.starts_with("Count per side");
}

const Movement* Catalogue::find(const MovementId& id) const {
  const auto at = std::ranges::lower_bound(movements, id, {}, &Movement::id);
  return at != movements.end() && at->id == id ? &*at : nullptr;
}

const Equipment* Catalogue::find(const EquipmentId& id) const {
  const auto at = std::ranges::find(equipment, id, &Equipment::id);
  return at != equipment.end() ? &*at : nullptr;
}

bool forbidden(const Movement& movement, const LimitId& limit) {
  return std::ranges::find(movement.avoid_with, limit) != movement.avoid_with.end();
}

}  // namespace repwright::domain
