#include "rehearsal/routes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace repwright::rehearsal {

namespace {

bool open(const domain::Route& route, const domain::GymClass& gym_class) {
  const domain::Weather& weather = gym_class.weather;
  if (std::ranges::find(weather.closed_routes, route.id) != weather.closed_routes.end()) return false;
  if (route.indoor) return true;
  return !gym_class.indoors && (route.wet_ok || !weather.rain) && (route.dark_ok || weather.daylight);
}

int laps_of(const domain::Route& route, base::Length distance) {
  return std::max(1, static_cast<int>(std::lround(distance / route.lap)));
}

/// The smaller, the better: indoors last, exact before near, room for all, few laps.
std::array<double, 4> badness(const domain::Route& route, const RouteWish& wish) {
  const int laps = laps_of(route, wish.distance);
  const double miss = std::abs((wish.distance - laps * route.lap).si());
  const bool crowded = route.max_people && *route.max_people < wish.people;
  return {route.indoor ? 1.0 : 0.0, miss < 0.5 ? 0 : miss, crowded ? 1.0 : 0.0, static_cast<double>(laps)};
}

bool suits(const domain::Route& route, const RouteWish& wish) {
  return route.lap.si() > 0 && (route.use == "carry") == wish.carry;
}

template <class Allowed>
const domain::Route* best_route(const domain::Hall& hall, const RouteWish& wish, Allowed allowed) {
  const domain::Route* best = nullptr;
  for (const domain::Route& route : hall.routes)
    if (suits(route, wish) && allowed(route) && (!best || badness(route, wish) < badness(*best, wish)))
      best = &route;
  return best;
}

}  // namespace

RouteChoice choose_route(const domain::Hall& hall, const domain::GymClass& gym_class, const RouteWish& wish) {
  RouteChoice choice;
  choice.route = best_route(hall, wish, [&](const domain::Route& r) { return open(r, gym_class); });
  if (choice.route) choice.laps = laps_of(*choice.route, wish.distance);
  choice.closed = best_route(hall, wish, [](const domain::Route&) { return true; }) != choice.route;
  return choice;
}

}  // namespace repwright::rehearsal
