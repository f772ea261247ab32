#include "domain/hall.hpp"

#include <algorithm>

namespace repwright::domain {

std::optional<int> Hall::places_of(const EquipmentId& equipment) const {
  if (unlimited) return std::nullopt;
  const auto at = std::ranges::find(places, equipment, &PlaceKind::equipment);
  if (at == places.end()) return std::nullopt;
  return at->count;
}

}  // namespace repwright::domain
