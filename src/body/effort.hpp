#pragma once

#include "body/body.hpp"
#include "body/constants.hpp"
#include "domain/catalogue.hpp"

namespace repwright::body {

/// What is the same for every body of one way of doing a movement: movement, unit, load. Made once per
/// script, turned into an `Effort` once per drawn body.
struct EffortSpec {
  Effort::Kind kind = Effort::Kind::Reps;
  Group group = Group::Legs;
  std::array<double, group_count> weight{};
  double brisk = 1.5, sustained = 2;  // s per unit
  double cost = 1, mode = 0.9;
  double load = 0;        // kg in all (implements together), 0: body only
  double body_share = 0;  // share of body mass that is moved
  double set_novice = 6, set_competent = 18, set_strong = 40;  // planned sets at the usual load
  double usual_load = 0;                                       // kg in all, of a competent adult; 0: none
  double climb = 0;                                            // metres per metre of a route
  double extra_mass = 0;                                       // vest, kg
  int machine = 0;                                             // 0 none, 1 rower, 2 fan bike, 3 ski machine
  domain::Unit unit = domain::Unit::Reps;
};

/// The spec of doing `movement` counted in `unit` with `load` (kg, all implements together). Falls back on
/// patterns, muscles and seconds of the catalogue where data/body.toml has no row.
EffortSpec effort_spec(const domain::Movement& movement, domain::Unit unit, double load,
                       const Constants& constants);

/// The effort for one body: its largest set from its capacities by the load-share rule (physiology 4.2), its
/// seconds per unit from its cadence, its oxygen cost from mass and load.
Effort effort_of(const EffortSpec& spec, const Body& body, const Constants& constants);

}  // namespace repwright::body
