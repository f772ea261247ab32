#pragma once

#include <map>
#include <vector>

#include "domain/catalogue.hpp"
#include "domain/gym_class.hpp"
#include "domain/hall.hpp"
#include "rehearsal/script.hpp"

namespace repwright::rehearsal {

/// The places of one class that are queued for, numbered as they are first needed.
class PlaceTable {
 public:
  /// `taken`: places of a kind that other kit of the class takes away.
  PlaceTable(const domain::Catalogue& catalogue, const domain::Hall& hall, const domain::GymClass& gym_class,
             std::map<domain::EquipmentId, int> taken = {});

  /// The scarcest place that the movement needs, or -1 if the hall limits none of its kit, or has none left
  /// (then `missing` names the kind: a board as written, or racks that take every bar).
  int place_of(const domain::Movement& movement);
  /// The place on a route that takes only so many at once, or -1.
  int place_on(const domain::Route& route);

  const std::vector<FloorPlace>& places() const { return places_; }
  const std::vector<domain::EquipmentId>& missing() const { return missing_; }

 private:
  std::optional<int> count_of(const domain::EquipmentId& id) const;
  int number(const domain::EquipmentId& id, int count);

  const domain::Catalogue& catalogue_;
  const domain::Hall& hall_;
  const domain::GymClass& gym_class_;
  std::map<domain::EquipmentId, int> taken_;
  std::vector<FloorPlace> places_;
  std::vector<domain::EquipmentId> missing_;
};

/// The kinds of places that the hall lists and of which the faults of the class leave none.
std::vector<domain::EquipmentId> kinds_gone(const domain::Hall& hall, const domain::GymClass& gym_class);

/// How many places of other kinds the class's kit takes away: `users` people use the kind `used`.
std::map<domain::EquipmentId, int> displaced_places(const domain::Catalogue& catalogue,
                                                    const domain::Hall& hall,
                                                    const std::map<domain::EquipmentId, int>& users);

}  // namespace repwright::rehearsal
