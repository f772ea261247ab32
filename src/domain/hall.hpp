#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "domain/ids.hpp"

namespace repwright::domain {

/// Places of one kind that people queue for: eight bar places, five rowers.
struct PlaceKind {
  EquipmentId equipment;
  int count = 0;
  bool operator==(const PlaceKind&) const = default;
};
/// Loose kit of one size: six kettlebells of 24 kg, four boxes of 30 cm.
struct KitLot {
  EquipmentId equipment;
  std::optional<base::Mass> mass;
  std::optional<base::Length> height;
  std::string size;
  int count = 0;
  bool operator==(const KitLot&) const = default;
};
struct Route {
  RouteId id;
  std::string name;
  base::Length lap;
  std::string shape;  // out-and-back, loop, shuttle
  bool dark_ok = true;
  bool wet_ok = true;
  bool indoor = false;
  std::optional<int> max_people;
  base::Length climb;   // per lap
  base::Duration door;  // from the station to the start line and back in, once each
  std::string use;      // "carry": not for runs
  std::vector<std::string> hazards;
  bool operator==(const Route&) const = default;
};
/// Each unit of `used` in use takes away one place of `taken`: a rack before a bar.
struct Displacement {
  EquipmentId used;
  EquipmentId taken;
  bool operator==(const Displacement&) const = default;
};
struct QuietHours {
  std::vector<std::string> days;
  int until_minute = 0;  // of the day
  std::string rule;
  bool operator==(const QuietHours&) const = default;
};

/// The room. A hall that lists no places and no kit is unlimited: nobody waits.
struct Hall {
  std::string name;
  std::vector<PlaceKind> places;
  std::vector<Displacement> displacements;
  std::vector<KitLot> kit;
  std::vector<Route> routes;
  std::optional<base::Area> floor;
  std::vector<QuietHours> quiet_hours;
  bool unlimited = true;
  bool operator==(const Hall&) const = default;

  /// Places of that kind, or nothing if the hall does not limit it.
  std::optional<int> places_of(const EquipmentId& equipment) const;
};

}  // namespace repwright::domain
