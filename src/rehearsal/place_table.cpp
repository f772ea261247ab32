#include "rehearsal/place_table.hpp"

#include <algorithm>
#include <utility>

namespace repwright::rehearsal {

namespace {

/// Loose kit is carried to the own spot and home kit is the person's own: nobody queues for either.
bool queued_for(const domain::Equipment& equipment) {
  return equipment.kind == "fixed" || equipment.kind == "machine" || equipment.kind == "room";
}

/// What the hall lists of a kind without what is out of order.
std::optional<int> places_in_order(const domain::Hall& hall, const domain::GymClass& gym_class,
                                   const domain::EquipmentId& id) {
  std::optional<int> units = hall.places_of(id);
  if (!units) return units;
  for (const domain::PlaceFault& fault : gym_class.faults)
    if (fault.equipment == id) *units -= fault.out;
  return units;
}

}  // namespace

PlaceTable::PlaceTable(const domain::Catalogue& catalogue, const domain::Hall& hall,
                       const domain::GymClass& gym_class, std::map<domain::EquipmentId, int> taken)
    : catalogue_(catalogue), hall_(hall), gym_class_(gym_class), taken_(std::move(taken)) {}

std::optional<int> PlaceTable::count_of(const domain::EquipmentId& id) const {
  const domain::Equipment* equipment = catalogue_.find(id);
  const std::optional<int> in_order = places_in_order(hall_, gym_class_, id);
  if (!equipment || !queued_for(*equipment) || !in_order) return std::nullopt;
  int units = *in_order;
  if (const auto at = taken_.find(id); at != taken_.end()) units -= at->second;
  return std::max(0, units) * std::max(1, equipment->people_per_unit);
}

int PlaceTable::number(const domain::EquipmentId& id, int count) {
  const auto at = std::ranges::find(places_, id, &FloorPlace::equipment);
  if (at != places_.end()) return static_cast<int>(at - places_.begin());
  places_.push_back({id, count});
  return static_cast<int>(places_.size()) - 1;
}

int PlaceTable::place_of(const domain::Movement& movement) {
  const domain::EquipmentId* scarcest = nullptr;
  int fewest = 0;
  for (const domain::EquipmentId& id : movement.equipment) {
    const std::optional<int> count = count_of(id);
    if (!count || (scarcest && *count >= fewest)) continue;
    scarcest = &id;
    fewest = *count;
  }
  if (!scarcest) return -1;
  if (fewest > 0) return number(*scarcest, fewest);
  if (std::ranges::find(missing_, *scarcest) == missing_.end()) missing_.push_back(*scarcest);
  return -1;
}

int PlaceTable::place_on(const domain::Route& route) {
  if (!route.max_people || *route.max_people < 1) return -1;
  return number(domain::EquipmentId{route.id.text}, *route.max_people);
}

std::vector<domain::EquipmentId> kinds_gone(const domain::Hall& hall, const domain::GymClass& gym_class) {
  std::vector<domain::EquipmentId> gone;
  for (const domain::PlaceKind& kind : hall.places)
    if (places_in_order(hall, gym_class, kind.equipment).value_or(1) <= 0) gone.push_back(kind.equipment);
  return gone;
}

std::map<domain::EquipmentId, int> displaced_places(const domain::Catalogue& catalogue,
                                                    const domain::Hall& hall,
                                                    const std::map<domain::EquipmentId, int>& users) {
  std::map<domain::EquipmentId, int> taken;
  for (const domain::Displacement& displacement : hall.displacements) {
    const auto at = users.find(displacement.used);
    const domain::Equipment* equipment = catalogue.find(displacement.used);
    if (at == users.end() || !equipment) continue;
    const int share = std::max(1, equipment->people_per_unit);
    const int needed = (at->second + share - 1) / share;
    taken[displacement.taken] += std::min(needed, hall.places_of(displacement.used).value_or(needed));
  }
  return taken;
}

}  // namespace repwright::rehearsal
