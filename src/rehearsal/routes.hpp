#pragma once

#include "base/quantity.hpp"
#include "domain/gym_class.hpp"
#include "domain/hall.hpp"

/// Where a distance is covered.
namespace repwright::rehearsal {

/// From the rig to the start line or back in where a route does not say (physiology reference 11.4).
inline constexpr double usual_door_s = 8;
/// Seconds that one turn of a shuttle costs (common practice, no source).
inline constexpr double turn_s = 1;

struct RouteWish {
  base::Length distance;
  int people = 0;  // who cover it
  bool carry = false;
};

struct RouteChoice {
  const domain::Route* route = nullptr;  // null: on the spot, as if outside
  int laps = 0;
  bool closed = false;  // a better one exists but is shut by coach, rain, dark or class
};

/// The open route whose laps make the distance exactly, with room for everybody and the fewest laps if there
/// is a choice; else the nearest distance; an indoor one only if no other is open.
RouteChoice choose_route(const domain::Hall& hall, const domain::GymClass& gym_class, const RouteWish& wish);

}  // namespace repwright::rehearsal
