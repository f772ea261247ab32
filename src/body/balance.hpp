#pragma once

#include <algorithm>

#include "base/math.hpp"
#include "body/dynamics.hpp"

/// The whole-body balance and the local pools over one stretch of constant work: what `work`, `rest` and
/// `ready_in` share. Formulas: docs/models/body.md, 'Balance' and 'Local fatigue'.
namespace repwright::body {

using base::exp;

/// The share of the critical rate that is left after half an hour (Riegel drift); 1 before.
inline double durability(double clock, const Constants& constants) {
  return clock < constants.durability_from
             ? 1.0
             : base::pow(clock / constants.durability_from, -constants.durability);
}

/// A stretch at one metabolic rate: how long, how hard, and what share of the critical rate it can use.
struct Stretch {
  double seconds = 0;
  double rate = 0;  // ml/kg/min
  double mode = 1;
};

/// Moves the reserve over the stretch; returns the mean reserve during it.
inline double spend(State& state, const Stretch& stretch, const Constants& constants) {
  const double critical = state.critical_rate * stretch.mode * durability(state.clock, constants);
  const double over = stretch.rate - critical;
  const double before = state.reserve;
  if (over >= 0) {
    state.reserve -= over * stretch.seconds / 60;
    return 0.5 * (before + state.reserve);
  }
  const double recovered = stretch.seconds * -over / (constants.reserve_recovery * 60 * state.reserve_full);
  const double left = exp(-recovered);
  const double missing = state.reserve_full - before;
  state.reserve = state.reserve_full - missing * left;
  const double mean_missing = recovered > 0 ? missing * ((1 - left) / recovered) : missing;
  return state.reserve_full - mean_missing;
}

/// The share of what the reserve misses that comes back in a second of standing still.
inline double resting_rate(const State& state, const Constants& constants) {
  const double spare = state.critical_rate * durability(state.clock, constants) - constants.standing_rate;
  return std::max(0.0, spare) / (constants.reserve_recovery * 60 * state.reserve_full);
}

/// How fast the local pools recover at that reserve, relative to a rested body of mean recovery.
inline double recovery_speed(const State& state, const Body& body, double reserve,
                             const Constants& constants) {
  const double missing = state.reserve_full - std::max(0.0, reserve);
  return state.reserve_full / ((state.reserve_full + constants.recovery_drag * missing) * body.recovery);
}

/// The time constants of a group's recovery, s.
inline Pools recovery_times(std::size_t group, const Constants& constants) {
  return Pools{constants.fast_time[group], constants.slow_time[group]};
}

/// How a drain of one falls on the two pools of a group.
inline Pools shares(const Effort& effort) {
  return Pools{effort.fast_share, 1 - effort.fast_share};
}

/// The pools of one group now, pending recovery counted but not applied.
inline Pools pools_now(const State& state, std::size_t group, const Constants& constants) {
  return state.pools[group] * exp(-state.pending[group] / recovery_times(group, constants));
}

/// Applies the pending recovery of one group; afterwards the sum of its pools is its fatigue.
inline void settle(State& state, std::size_t group, const Constants& constants) {
  state.pools[group] = pools_now(state, group, constants);
  state.pending[group] = 0;
}

/// Fatigue of one group now.
inline double fatigue(const State& state, std::size_t group, const Constants& constants) {
  return sum(pools_now(state, group, constants));
}

/// What a person out of breath cannot call on of a group, as its fatigue is counted.
inline double out_of_reach(const State& state, const Effort& effort, const Constants& constants) {
  return constants.breathless * (1 - effort.theta) * (1 - state.reserve / state.reserve_full);
}

/// Units kept in reserve when a person breaks a set of their own will.
inline double kept(const Effort& effort, const Constants& constants) {
  const double wish = std::max(constants.keep_min, constants.keep_share * effort.best);
  return std::clamp(0.5 * (effort.best - 1), 0.0, wish);
}

}  // namespace repwright::body
