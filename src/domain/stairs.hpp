#pragma once

#include <algorithm>

#include "domain/catalogue.hpp"
#include "domain/hall.hpp"

namespace repwright::domain {

/// Whether the movement may be proposed in the hall in place of another. What needs stairs may not where the
/// hall lists places and no stairs among them; a coach who writes it anyway knows where they are.
inline bool may_propose(const Hall& hall, const Movement& movement) {
  const EquipmentId stairs{"stairs"};
  return hall.unlimited || std::ranges::find(movement.equipment, stairs) == movement.equipment.end() ||
         hall.places_of(stairs).value_or(0) > 0;
}

}  // namespace repwright::domain
