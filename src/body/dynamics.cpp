#include "body/dynamics.hpp"

#include <cmath>
#include <limits>

#include "body/balance.hpp"

namespace repwright::body {

State fresh(const Body& body, double day_factor, const Constants& constants) {
  State state;
  state.critical_rate = (constants.run_rate * body.critical_speed + constants.run_base) * day_factor;
  state.reserve_full = constants.reserve_per_metre * body.reserve_distance;
  state.reserve = state.reserve_full;
  return state;
}

double heat_factor(double wet_bulb_globe_celsius) {
  return 1 - 0.0035 * std::max(0.0, wet_bulb_globe_celsius - 15);
}

Pacing pace_for(double end, double length) {
  const double tripled = base::log(std::max(1.0, length) / 240) / base::log(3);
  return {.end = end, .settled = std::clamp(0.5 * tripled, -0.5, 0.5)};
}

double target_rate(const State& state, const Pacing& pacing, const Constants& constants) {
  const double spare = std::max(0.0, state.reserve - constants.reserve_kept * state.reserve_full);
  const double spread = std::max(constants.shortest_spread, pacing.end - state.clock);
  return state.critical_rate * durability(state.clock, constants) + 60 * spare / spread;
}

void rest(State& state, const Body& body, double seconds, const Constants& constants) {
  const double reserve = spend(state, {.seconds = seconds, .rate = constants.standing_rate}, constants);
  const double recovered = seconds * recovery_speed(state, body, reserve, constants);
  for (double& pending : state.pending) pending += recovered;
  state.clock += seconds;
}

double available(const State& state, const Effort& effort, const Constants& constants) {
  const auto group = index_of(effort.group);
  return (1 - effort.theta - out_of_reach(state, effort, constants) - fatigue(state, group, constants)) /
         effort.drain;
}

namespace {

/// What keeps a person from starting: the pools, and the lack of breath, which goes as the reserve comes
/// back.
struct Held {
  Pools pools;
  double breath = 0;
  double breath_rate = 0;  // per recovery second
};

/// Recovery seconds until the sum falls to `target`. Newton on the logarithm: the logarithm of a sum of
/// exponentials is convex and falls, so the steps come from the left and never pass the root.
double recovered_by(const Held& held, double target, Pools times) {
  double at = 0;
  for (int step = 0; step < 6; ++step) {
    const Pools left = held.pools * exp(-at / times);
    const double breath = held.breath > 0 ? held.breath * exp(-at * held.breath_rate) : 0;
    const double fatigue = sum(left) + breath;
    const double move =
        fatigue / (sum(left / times) + breath * held.breath_rate) * base::log(fatigue / target);
    at += move;
    if (move < 1e-3) break;
  }
  return at;
}

/// Units that must be available before the person starts again.
double needed(const Body& body, const Effort& effort, double left, const Constants& constants) {
  const double best = effort.best;
  const bool whole = effort.kind == Effort::Kind::Reps;
  const double share = body.style_share * best;
  const double wish = std::max(1.0, whole ? std::floor(share + 0.5) : share);
  const double want = std::min(wish, left);
  const double keep = left <= constants.finish_reps ? std::min(constants.keep_min, kept(effort, constants))
                                                    : kept(effort, constants);
  return std::max(std::min(want + keep, 0.95 * best), std::min(1.0, left) + 0.5 * keep);
}

}  // namespace

double ready_in(const State& state, const Body& body, const Effort& effort, double left,
                const Constants& constants) {
  const bool paced_only = effort.kind == Effort::Kind::Run || effort.kind == Effort::Kind::Machine;
  if (paced_only || left <= 0) return 0;
  const double grind = effort.kind == Effort::Kind::Reps ? constants.grind : 0;
  if (effort.best + grind < std::min(1.0, left)) return std::numeric_limits<double>::infinity();
  const auto group = index_of(effort.group);
  const double target = 1 - effort.theta - (needed(body, effort, left, constants) - grind) * effort.drain;
  // Recovery only lowers fatigue: mostly what was there before it is low enough, and no exponential is
  // needed.
  const double breath = out_of_reach(state, effort, constants);
  if (sum(state.pools[group]) + breath <= target) return 0;
  const double speed = recovery_speed(state, body, state.reserve, constants);
  const Held held{.pools = pools_now(state, group, constants),
                  .breath = breath,
                  .breath_rate = resting_rate(state, constants) / speed};
  const double low = std::max(target, 1e-9);
  if (sum(held.pools) + breath <= low) return 0;
  const double wanted = recovered_by(held, low, recovery_times(group, constants));
  const double first = wanted / speed;
  State after = state;
  const double reserve = spend(after, {.seconds = first, .rate = constants.standing_rate}, constants);
  return wanted / recovery_speed(state, body, reserve, constants) + constants.reaction;
}

double break_for(const State& state, const Body& body, const Effort& effort, double left,
                 const Constants& constants) {
  return std::max(constants.shortest_break, ready_in(state, body, effort, left, constants));
}

}  // namespace repwright::body
