#pragma once

#include <array>
#include <map>
#include <string>

#include "body/body.hpp"

namespace repwright::body {

/// How one movement works a body; from data/body.toml, each row with its source.
struct MovementCost {
  Group group = Group::Legs;
  std::array<double, group_count> weight{};  // own group 1
  double cost = 1;                           // ml O2-equivalent/kg per unit, before load
  double mode = 0.9;
  std::string source;
};

/// The shared constants of the body model, from data/body.toml; defaults are those of docs/models/body.md.
struct Constants {
  double kappa = 1.0 / 30;       // per rep
  double kappa_held = 1.0 / 55;  // per second of a hold or carry: kappa / 1.83 s
  std::array<double, group_count> fast_share{.75, .75, .75, .75, .75};
  std::array<double, group_count> fast_time{60, 60, 30, 40, 45};  // s
  std::array<double, group_count> slow_time{200, 200, 300, 250, 250};
  double recovery_drag = 0.3;      // s = 1 + drag (1 - B/W)
  double fade = 0.4;               // cycle grows by this share towards failure
  double leg_drag = 0.10;          // run speed lost per leg fatigue
  double reserve_kept = 0.05;      // of W
  double reserve_recovery = 1.5;   // k_rec
  double reserve_per_metre = 0.2;  // W = 0.2 D', ml/kg
  double shortest_spread = 60;     // s; the reserve is never spent faster than over this
  double standing_rate = 5.0;      // ml/kg/min
  double run_rate = 12.0;          // ml/kg/min per m/s
  double run_base = 3.5;
  double other_group_recovery = 0.9;
  std::array<double, group_count> run_hold{0, 0, .6, .2, 0};  // share of recovery that a run takes away
  double keep_share = 0.15;                                   // rir = max(keep_min, keep_share N)
  double keep_min = 0.3;
  double finish_reps = 2;         // so few left are done without keeping any
  double shortest_break = 3;      // s
  double reaction = 0.5;          // s from ready to working again
  double durability_from = 1800;  // s
  double durability = 0.057;
  std::map<std::string, MovementCost> movements;
};

}  // namespace repwright::body
