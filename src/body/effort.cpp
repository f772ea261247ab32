#include "body/effort.hpp"

#include <algorithm>
#include <cmath>

#include "base/hash.hpp"
#include "base/math.hpp"
#include "base/random.hpp"
#include "body/estimate.hpp"

namespace repwright::body {

double set_at_share(double reference_set, double share_ratio, double kappa) {
  const double theta = share_ratio / (1 + kappa * reference_set);
  return (1 / theta - 1) / kappa;
}

double set_at_load(double best_single, double load, double kappa) {
  return (best_single * (1 + kappa) / load - 1) / kappa;
}

double single_from_set(double load, double reps) {
  return load * (1 + reps / 30) / (1 + 1.0 / 30);
}

double best_single(const EffortSpec& spec, const Body& body) {
  return spec.strength ? body.best_lift[index_of(*spec.strength)] * spec.of : 0;
}

double set_of_load(const EffortSpec& spec, const Body& body) {
  if (spec.load <= 0 || !spec.strength) return 0;
  return std::max(0.0, set_at_load(best_single(spec, body), spec.load, spec.kappa * spec.units));
}

double load_of(const EffortSpec& spec, const Body& body) {
  if (spec.free_set <= 0 || !spec.strength) return spec.load;
  const double kappa = spec.kappa * spec.units;
  return best_single(spec, body) * (1 + kappa) / (1 + kappa * spec.free_set);
}

namespace {

constexpr double reference_share(Group group) {
  return group == Group::Pull ? 0.95 : 0.64;
}

// The catalogue's planned set of a competent adult in each group's own test.
constexpr std::array<double, group_count> reference_planned{18, 6, 45, 25, 40};

Group group_of(const domain::Movement& movement) {
  const auto has = [&](std::string_view name) { return std::ranges::count(movement.patterns, name) > 0; };
  if (has("push")) return Group::Push;
  if (has("pull")) return Group::Pull;
  if (has("trunk")) return Group::Core;
  if (has("carry")) return Group::Grip;
  return Group::Legs;
}

/// A row for a movement of a gym's own that data/body.toml does not know.
domain::MovementCost guess(const domain::Movement& movement, const Constants& constants) {
  domain::MovementCost row;
  row.group = group_of(movement);
  row.weight[index_of(row.group)] = 1;
  if (movement.category == "run") return row;
  if (movement.category == "ergometer") return row.drag = 2.8, row;
  const double rise = movement.rise ? movement.rise->si() : 0.3;
  row.cost = constants.lift_cost * rise * movement.body_fraction.value_or(0.5) + 0.3;
  if (movement.unbroken)
    row.ratio = movement.unbroken->competent / reference_planned.at(index_of(row.group));
  else
    row.ratio = 0.5;
  return row;
}

domain::Pace pace_in(const domain::Movement& movement, domain::Unit unit) {
  if (const auto found = movement.pace.find(unit); found != movement.pace.end()) return found->second;
  if (unit == domain::Unit::Seconds) return {.brisk = 1, .sustained = 1};
  const auto usual = movement.pace.find(movement.default_unit);
  return usual != movement.pace.end() ? usual->second : domain::Pace{.brisk = 2, .sustained = 3};
}

Effort::Kind kind_of(const domain::MovementCost& row, const domain::Movement& movement, domain::Unit unit) {
  const bool limited = row.share || row.ratio || row.strength;
  if (row.drag) return Effort::Kind::Machine;
  if (!limited && movement.category == "run") return Effort::Kind::Run;
  if (unit == domain::Unit::Seconds) return Effort::Kind::Hold;
  return unit == domain::Unit::Metres ? Effort::Kind::Carry : Effort::Kind::Reps;
}

double base_kappa(domain::Unit unit, double seconds, const Constants& constants) {
  if (unit == domain::Unit::Reps) return constants.kappa;
  return constants.kappa_held * (unit == domain::Unit::Seconds ? 1 : seconds);
}

/// Largest set by what the body itself lets happen, in the catalogue's units; infinite if it never ends one.
double own_set(const EffortSpec& spec, const Body& body, double kappa) {
  const double reference = body.best_set[index_of(spec.group)];
  const double burden = 1 + spec.extra_mass / body.mass;
  if (spec.share) {
    const double ratio = *spec.share / reference_share(spec.group);
    const double set = set_at_share(reference, ratio * burden, kappa);
    // Pull-ups lose more by carried mass than the share tells: exponent -7.9 (Vanderburgh & Edmonds 1997).
    if (burden > 1 && spec.group == Group::Pull && set > 6)
      return std::min(set, set_at_share(reference, ratio, kappa) * base::pow(burden, -7.9));
    return set;
  }
  // Below the first rep of the group's test its logarithm goes on: an easier movement has reps left there,
  // and a mark of it still tells of the capacity.
  if (spec.ratio) return set_at_share(*spec.ratio * base::exp(log_of_set(reference)), burden, kappa);
  return std::numeric_limits<double>::infinity();
}

/// Both limits at once: what each rep takes of the one and of the other adds up.
double largest_set(const EffortSpec& spec, const Body& body, double kappa) {
  const double own = own_set(spec, body, kappa);
  const double load = load_of(spec, body);
  if (!spec.strength || load <= 0) return own;
  const double by_load = set_at_load(best_single(spec, body), load, kappa);
  if (own <= 0 || by_load <= 0) return std::min(own, by_load);
  return 1 / (1 / own + 1 / by_load);
}

/// The group's own test, which a mark tells of without a detour.
bool is_own_test(const EffortSpec& spec) {
  if (spec.strength) return false;
  return spec.share ? *spec.share == reference_share(spec.group) : spec.ratio && *spec.ratio == 1;
}

/// Lifts and what hangs from a bar are skills: at the same strength one person does a rep in half of the time
/// and with far less breath than another (common practice, no source).
bool is_skill(const EffortSpec& spec) {
  return spec.strength || spec.group == Group::Pull;
}

/// How good a hand a body has for a single movement, beside what its marks tell of all of the kind.
struct Knack {
  double set = 0;   // added to the logarithm of its largest set
  double pace = 1;  // factor on its seconds and its cost per unit
};

Knack knack_of(const EffortSpec& spec, const Body& body, const Constants& constants) {
  if (body.knack == 0 || spec.knack == 0) return {};
  const auto z = [&](std::uint64_t draw) {
    return base::normal_at({body.knack}, spec.knack, 0, base::Purpose::Knack, draw);
  };
  return {.set = constants.prior.knack_sd * z(0),
          .pace = is_skill(spec) ? base::exp(constants.prior.pace_knack_sd * z(1)) : 1};
}

/// Below the first rep as `log_of_set` goes on.
double with_knack(double set, const Knack& knack) {
  return knack.set == 0 || !std::isfinite(set) ? set : set_of_log(log_of_set(set) + knack.set);
}

void fill_engine(Effort& effort, const EffortSpec& spec, const Body& body, const Constants& constants) {
  using Display = Effort::Display;
  effort.best = std::numeric_limits<double>::infinity();
  for (double& held : effort.weight) held *= constants.engine_hold;
  effort.display = spec.unit == domain::Unit::Seconds        ? Display::Seconds
                   : spec.unit == domain::Unit::Kilocalories ? Display::Kilocalories
                                                             : Display::Metres;
  if (effort.kind == Effort::Kind::Run) {
    // Climbing costs 0.9 against 0.2 per metre (ACSM Guidelines); going down again gives half of it back.
    effort.slope = (1 + 0.5 * 4.5 * spec.climb) * (1 + (spec.extra_mass + spec.load) / body.mass) - 1;
    effort.base = constants.run_base;
    return;
  }
  effort.gain = constants.watts_per_rate * body.mass * body.machine;
  effort.base = constants.standing_rate;
  effort.drag = spec.drag;
}

}  // namespace

EffortSpec effort_spec(const domain::Movement& movement, domain::Unit unit, double load,
                       const Constants& constants) {
  const auto known = constants.movements.find(movement.id);
  const domain::MovementCost row =
      known != constants.movements.end() ? known->second : guess(movement, constants);
  const domain::Pace pace = pace_in(movement, unit);
  const domain::Pace usual = pace_in(movement, movement.default_unit);
  const double units = usual.brisk / pace.brisk;
  const double rise = movement.rise ? movement.rise->si() : 0;
  EffortSpec spec;
  spec.kind = kind_of(row, movement, unit);
  spec.group = row.group;
  spec.weight = row.weight;
  spec.brisk = pace.brisk;
  spec.sustained = pace.sustained;
  spec.cost = row.cost / units;
  spec.mode = row.mode;
  spec.load_cost = (rise > 0 ? constants.lift_cost * rise : row.cost) / units;
  spec.kappa = base_kappa(movement.default_unit, usual.brisk, constants) / units;
  spec.load = load;
  if (movement.unbroken) spec.usual_set = 1.3 * movement.unbroken->competent;
  if (load <= 0 && row.strength) spec.free_set = spec.usual_set;
  spec.share = row.share;
  spec.ratio = row.ratio;
  spec.strength = row.strength;
  spec.of = row.of;
  spec.units = units;
  spec.drag = row.drag.value_or(spec.drag);
  spec.unit = unit;
  if (!is_own_test(spec)) spec.knack = base::fnv1a(movement.id.text);
  return spec;
}

EffortSpec unknown_effort(domain::Unit unit, const Constants& constants) {
  EffortSpec spec;
  spec.unit = unit;
  spec.weight[index_of(spec.group)] = 1;
  switch (unit) {
    case domain::Unit::Metres:
      spec.kind = Effort::Kind::Run;
      spec.mode = 1;
      break;
    case domain::Unit::Kilocalories:
      spec.kind = Effort::Kind::Machine;
      break;
    case domain::Unit::Seconds:
      spec.kind = Effort::Kind::Hold;
      spec.brisk = spec.sustained = 1;
      spec.cost = 0.1;
      spec.kappa = constants.kappa_held;
      spec.ratio = 1;
      break;
    case domain::Unit::Reps:
      spec.brisk = 2.2;
      spec.sustained = 3;
      spec.kappa = constants.kappa;
      spec.ratio = 0.4;
      break;
  }
  return spec;
}

namespace {

/// Seconds per unit over those of a person for whom the movement is as heavy as it usually is.
double slowness(const EffortSpec& spec, double theta, double kappa, const Constants& constants) {
  if (spec.usual_set <= 0 || !is_skill(spec)) return 1;
  const double usual = 1 / (1 + kappa * spec.usual_set);
  return 1 + constants.quickness * (theta / usual - 1);
}

/// Few heavy reps tire by what comes back within the minute, many light ones by what takes longer: the slow
/// share grows with what a set to the end takes of the fresh group, 1 - theta, which is a half for thirty.
double fast_share_of(const Effort& effort, const Constants& constants) {
  const double slow = 1 - constants.fast_share[index_of(effort.group)];
  if (constants.lightness <= 0) return 1 - slow;
  return 1 - std::min(1.0, slow * base::pow(std::max(1e-9, 2 * (1 - effort.theta)), constants.lightness));
}

/// Whoever cannot do one rep, however long they try, takes a band, a box or plates off.
bool needs_help(const EffortSpec& spec, double set, const Constants& constants) {
  return spec.helped_set > 0 && spec.kind == Effort::Kind::Reps && set * spec.units + constants.grind < 1;
}

}  // namespace

Effort effort_of(const EffortSpec& spec, const Body& body, const Constants& constants) {
  Effort effort;
  effort.kind = spec.kind;
  effort.group = spec.group;
  effort.weight = spec.weight;
  effort.mode = spec.mode;
  if (spec.kind == Effort::Kind::Run || spec.kind == Effort::Kind::Machine) {
    fill_engine(effort, spec, body, constants);
    return effort;
  }
  const double kappa = spec.kappa * spec.units;
  const Knack knack = knack_of(spec, body, constants);
  const double own = std::max(with_knack(largest_set(spec, body, kappa), knack), -0.9 / kappa);
  const double set = needs_help(spec, own, constants) ? spec.helped_set / spec.units : own;
  effort.best = set * spec.units;
  effort.theta = 1 / (1 + kappa * set);
  effort.drain = spec.kappa * effort.theta;
  effort.fast_share = fast_share_of(effort, constants);
  const double cadence = spec.kind == Effort::Kind::Hold
                             ? 1
                             : body.cadence * slowness(spec, effort.theta, kappa, constants) * knack.pace;
  effort.brisk = spec.brisk * cadence;
  effort.sustained = spec.sustained * cadence;
  const double moved = spec.cost * (1 + spec.extra_mass / body.mass);
  effort.cost = knack.pace * (moved + spec.load_cost * load_of(spec, body) / body.mass) / body.machine;
  return effort;
}

}  // namespace repwright::body
