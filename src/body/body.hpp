#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "base/math.hpp"
#include "body/constants.hpp"

/// One person's body as the dynamics need it, and the moving state of it during a class.
/// Model, units and sources: docs/models/body.md (Monod & Scherrer 1965; Skiba et al. 2015; the two-pool
/// local fatigue and its constants are ours, hand-set from the tables named there).
namespace repwright::body {

/// A drawn body. Speeds m/s, lengths m, times s; capacities are the largest unbroken sets of the reference
/// movements (floor push-up, strict pull-up, air squat, sit-up; dead hang in seconds for the grip). Below
/// one: 30 (S - 1) with the strength S as a share of what a single rep needs.
struct Body {
  double critical_speed = 3.3;
  double reserve_distance = 160;  // D'
  double top_speed = 7.5;         // v_max of the three-parameter form (Morton 1996)
  std::array<double, group_count> best_set{28, 7, 90, 45, 40};
  std::array<double, lift_count> best_lift{90, 110, 45, 70, 65};  // 1RM, kg: squat, hinge, press, row, clean
  double cadence = 1;                                             // multiplies seconds per rep
  double recovery = 1;                                            // multiplies both recovery time constants
  double transition = 4;                                          // s, on the spot
  double mass = 75;                                               // kg
  double machine = 1;         // power on ergometers and in reps relative to what the run tells
  double vo2max = 45;         // ml/kg/min, derived or measured
  double style_share = 0.20;  // q: set taken after a break, as share of the best set
  std::uint64_t knack = 0;    // whose luck with single movements it has; 0: what the group's test tells
};

/// One way of doing one movement, by one body: all that the dynamics need per rep, metre or second.
/// Reps are whole; holds and carries are the same in fractions of a second or metre; runs and machines are
/// paced by the whole body alone, at as many units per second as their target rate gives.
struct Effort {
  enum class Kind : std::uint8_t { Reps, Hold, Run, Machine, Carry };
  /// What one unit of a run or machine is: metres, kilocalories on a machine's display, or seconds.
  enum class Display : std::uint8_t { Metres, Kilocalories, Seconds };
  Kind kind = Kind::Reps;
  Group group = Group::Legs;
  double theta = 0.5;       // share of the fresh group that one unit needs, 1 / (1 + kappa N)
  double drain = 1.0 / 60;  // kappa * theta: what one unit takes from its group
  double fast_share = .75;  // of that, what comes back fast
  /// Drain on each group relative to the own one (own: 1); of a run or machine: how much it keeps the group
  /// from recovering.
  std::array<double, group_count> weight{};
  double brisk = 1.5;  // s per unit, fresh and hurrying
  double sustained = 1.5;
  double cost = 1.0;  // ml O2-equivalent/kg per unit
  double mode = 0.9;  // share of the critical rate that this work can use
  double best = 30;   // largest unbroken set (units); infinite for runs and machines
  double slope = 0;   // extra O2 share of a run by climb or carried load
  Display display = Display::Metres;
  double gain = 1;    // machine: watts per ml/kg/min above its base
  double base = 3.5;  // run, machine: ml/kg/min at no speed
  double drag = 2.8;  // machine: watts at 1 m/s
};

/// The fatigue of one muscle group: [0] the fast pool, [1] the slow one.
using Pools = base::Pair;

inline double sum(Pools pools) {
  return pools[0] + pools[1];
}

/// The moving state. `reserve` is B of the balance model (ml/kg), from `reserve_full` downwards, may be
/// negative.
struct State {
  double reserve = 0;
  double reserve_full = 0;
  double critical_rate = 0;  // Pc, ml/kg/min, with the day's factor
  std::array<Pools, group_count> pools{};
  std::array<double, group_count> pending{};  // recovery not yet applied to the pools, s at full speed
  double clock = 0;  // s since the person's first work of the class (durability term)
};

}  // namespace repwright::body
