#pragma once

#include <limits>
#include <optional>

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
  double cost = 1, mode = 0.9;        // ml O2/kg per unit, body alone
  double load_cost = 0;               // ml O2 per kg of load and unit
  double kappa = 1.0 / 30;            // per unit
  double load = 0;                    // kg in all (implements together), 0: body only, or by `free_set`
  double usual_set = 0;               // the largest set that `brisk` is meant for; 0: not known
  double free_set = 0;                // the load goes by the body: each takes what gives this largest set
  double helped_set = 0;              // to which whoever has not one rep is helped; 0: nobody is
  std::optional<double> share;        // of body mass moved, for the load-share rule
  std::optional<double> ratio;        // largest set in `units` over that of the group's own test
  std::optional<Lift> strength;
  std::uint64_t knack = 0;  // which movement it is, for `Body::knack`; 0: the group's own test
  double of = 1;            // best single as a share of that of `strength`
  double units = 1;         // so many of these units are one default unit of the catalogue
  double climb = 0;         // metres climbed per metre of a route, as much again descended
  double extra_mass = 0;    // vest, kg
  double drag = 2.8;        // machine: watts at 1 m/s
  domain::Unit unit = domain::Unit::Reps;
};

/// The spec of doing `movement` counted in `unit` with `load` (kg, all implements together; 0: each takes
/// their own, such that the catalogue's planned set fits). Falls back on patterns, muscles, set sizes and
/// seconds of the catalogue where `constants` has no row. The turns of a shuttle are not in it. `climb` and
/// `extra_mass` are for the caller to fill in.
EffortSpec effort_spec(const domain::Movement& movement, domain::Unit unit, double load,
                       const Constants& constants);

/// What a line of work costs that nobody knows: an easy whole-body movement at a middling pace.
EffortSpec unknown_effort(domain::Unit unit, const Constants& constants);

/// The effort for one body: its largest set from its capacities by the load-share rule (physiology 4.2), its
/// seconds per unit from its cadence, its oxygen cost from mass and load.
Effort effort_of(const EffortSpec& spec, const Body& body, const Constants& constants);

/// The heaviest load of one rep, kg; 0 where no lift limits the movement.
double best_single(const EffortSpec& spec, const Body& body);

/// The largest set that the spec's load gives this body by its best single; 0 where that says nothing.
double set_of_load(const EffortSpec& spec, const Body& body);

/// The load that this body takes: the said one, or its own choice; 0 for body weight.
double load_of(const EffortSpec& spec, const Body& body);

/// What a capacity is for a body of that mass when it moves `share` of it where the group's own test moves
/// `reference`: theta' = theta share / reference (Suprak 2011 and others; docs/models/body.md).
double set_at_share(double reference_set, double share_ratio, double kappa);

/// How many reps in a row a load gives by the identity of Epley (1985, from memory): 30 (1RM 31/30 / load -
/// 1).
double set_at_load(double best_single, double load, double kappa);

/// The best single that a set of so many at a load tells; the load itself for one.
double single_from_set(double load, double reps);

}  // namespace repwright::body
