#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "domain/ids.hpp"

/// The shared numbers of the body model, the same for everybody: data/body.toml, read in `store`, used in
/// `body`. What they mean and where they come from is docs/models/body.md.
namespace repwright::domain {

/// What tires on its own account.
enum class MuscleGroup : std::uint8_t { Push, Pull, Legs, Core, Grip };
inline constexpr std::size_t muscle_group_count = 5;

/// The lifts whose best single limits the loaded movements.
enum class Lift : std::uint8_t { Squat, Hinge, Press, Pull, Clean };
inline constexpr std::size_t lift_count = 5;

/// How one movement works a body. The largest set follows from `share` or `ratio`, from the load, or from
/// both; with none of them only the whole body limits the movement (a run, a machine).
struct MovementCost {
  MuscleGroup group = MuscleGroup::Legs;
  std::array<double, muscle_group_count>
      weight{};                 // drain on each group relative to the own one, which has 1
  double cost = 1;              // ml O2/kg per default unit of the catalogue, before load
  double mode = 0.9;            // share of the critical metabolic rate that it can use
  std::optional<double> share;  // of body mass moved
  std::optional<double> ratio;  // largest set over that of the group's own test
  std::optional<Lift> strength;
  double of = 1;               // its best single as a share of that of `strength`
  std::optional<double> drag;  // a machine: watts at 1 m/s on its display
  std::string source;
  bool operator==(const MovementCost&) const = default;
};

/// What is thought of a person before any mark, as far as the public profiles say more of it than judgement:
/// log standard deviations and medians of what no test measures, and what a lift or a set tells of it
/// (correlations). The published part of the prior is in `body`.
struct PriorConstants {
  double cadence_sd = .12;
  double recovery_sd = .25;
  double transition = 4;  // s, median on the spot
  double transition_sd = .25;
  double style = .20;  // median share of the best set taken after a break
  double style_sd = .25;
  double machine_sd = .10;
  double lift_sd = .24;
  double knack_sd = .15;           // of a single movement's largest set beside what the group's test tells
  double pace_knack_sd = .1;       // of its seconds and its cost per unit
  double cadence_training = -.03;  // per unit of ln(1 + years)
  double transition_training = -.20;
  double machine_training = 0;
  double pull_training = .25;
  double clean_speed = 0;
  double clean_reserve = 0;
  double clean_cadence = -.20;
  double clean_push = .25;
  double clean_pull = .25;
  double clean_legs = .20;
  double clean_core = 0;
  double clean_recovery = 0;
  double clean_transition = 0;
  double clean_machine = .25;
  double clean_press = .70;
  double squat_cadence = -.20;
  double squat_push = .25;
  double squat_legs = .20;
  double squat_machine = .25;
  double speed_recovery = -.25;
  double speed_transition = -.30;
  double speed_machine = 0;
  double pull_recovery = 0;
  double pull_transition = -.20;
  double pull_press = .25;
  double cadence_recovery = .15;
  double cadence_transition = .35;
  bool operator==(const PriorConstants&) const = default;
};

/// Log standard deviations of marks: how much a person's best on some day tells of the body that works today.
struct MarkNoise {
  double run = .02;
  double short_run = .03;  // below 600 m
  double machine = .03;
  double set = .10;
  double any_style = .25;    // of a set in no said style
  double any_style_rep = 0;  // reps, the same: the fewer, the less it is known whether they were swung
  double set_rep = .4;       // reps
  double timed_reps = .09;
  double hold = .15;
  double load = .05;
  double load_rep = .01;  // more for each rep of a set
  double oxygen = .04;
  bool operator==(const MarkNoise&) const = default;
};

struct BodyConstants {
  double kappa = 1.0 / 30;       // per rep
  double kappa_held = 1.0 / 55;  // per second of a hold or carry: kappa / 1.83 s
  std::array<double, muscle_group_count> fast_share{.75, .75, .75, .75, .75};  // of a set of thirty
  std::array<double, muscle_group_count> fast_time{60, 60, 30, 40, 45};        // s
  std::array<double, muscle_group_count> slow_time{200, 200, 300, 250, 250};
  double lightness = 0;        // the slow share goes with this power of what a whole set takes
  double recovery_drag = 0.3;  // s = 1 + drag (1 - B/W)
  double fade = 0.4;           // a unit takes longer by this share towards failure
  double quickness = 0;    // a unit of a skill is quicker by this share of how much lighter it is than usual
  double breathless = 0;   // share of a fresh group that is out of reach when the reserve is spent
  double leg_drag = 0.10;  // run speed lost per leg fatigue
  double reserve_kept = 0.05;      // of W
  double reserve_recovery = 1.5;   // k_rec
  double reserve_per_metre = 0.2;  // W = 0.2 D', ml/kg
  double shortest_spread = 60;     // s; the reserve is never spent faster than over this
  double standing_rate = 5.0;      // ml/kg/min
  double run_rate = 12.0;          // ml/kg/min per m/s
  double run_base = 3.5;
  double engine_hold = 0.6;           // share of recovery that a run or machine takes from what it works most
  double watts_per_rate = 1 / 14.35;  // W per kg at 1 ml/kg/min: 20 % efficient, 20.9 J per ml
  double lift_cost = 2.7;             // ml O2 per kg and metre lifted: 20 % efficient, 15 % more for lowering
  double other_group_recovery = 0.9;
  double keep_share = 0.15;  // units kept: max(keep_min, keep_share N)
  double keep_min = 0.3;
  double grind = 0;               // share of a unit that may be missing when a person tries it
  double finish_reps = 2;         // so few left are done without keeping any
  double shortest_break = 3;      // s
  double reaction = 0.5;          // s from ready to working again
  double durability_from = 1800;  // s
  double durability = 0.057;
  PriorConstants prior;
  MarkNoise marks;
  std::map<MovementId, MovementCost> movements;
  bool operator==(const BodyConstants&) const = default;
};

}  // namespace repwright::domain
