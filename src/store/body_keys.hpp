#pragma once

#include <array>
#include <string_view>

#include "domain/body_constants.hpp"
#include "store/toml_table.hpp"

/// The names that data/body.toml gives the numbers of the body model, with what is allowed: one list for
/// reading them and for writing calibrated ones.
namespace repwright::store {

template <class Owner>
struct Named {
  std::string_view key;
  double Owner::* member;
  Bounds bounds;
};

inline constexpr std::array model_keys{
    Named{"kappa", &domain::BodyConstants::kappa, {0.005, 0.2}},
    Named{"kappa_held", &domain::BodyConstants::kappa_held, {0.002, 0.2}},
    Named{"lightness", &domain::BodyConstants::lightness, {0, 3}},
    Named{"recovery_drag", &domain::BodyConstants::recovery_drag, {0, 5}},
    Named{"fade", &domain::BodyConstants::fade, {0, 3}},
    Named{"quickness", &domain::BodyConstants::quickness, {0, 1}},
    Named{"breathless", &domain::BodyConstants::breathless, {0, 1}},
    Named{"leg_drag", &domain::BodyConstants::leg_drag, {0, 0.5}},
    Named{"reserve_kept", &domain::BodyConstants::reserve_kept, {0, 0.9}},
    Named{"reserve_recovery", &domain::BodyConstants::reserve_recovery, {0.1, 20}},
    Named{"reserve_per_metre", &domain::BodyConstants::reserve_per_metre, {0.05, 1}},
    Named{"shortest_spread", &domain::BodyConstants::shortest_spread, {1, 600}},
    Named{"standing_rate", &domain::BodyConstants::standing_rate, {3, 10}},
    Named{"run_rate", &domain::BodyConstants::run_rate, {5, 30}},
    Named{"run_base", &domain::BodyConstants::run_base, {0, 10}},
    Named{"engine_hold", &domain::BodyConstants::engine_hold, {0, 0.95}},
    Named{"watts_per_rate", &domain::BodyConstants::watts_per_rate, {0.01, 0.5}},
    Named{"lift_cost", &domain::BodyConstants::lift_cost, {0.5, 10}},
    Named{"other_group_recovery", &domain::BodyConstants::other_group_recovery, {0, 1}},
    Named{"keep_share", &domain::BodyConstants::keep_share, {0, 0.9}},
    Named{"keep_min", &domain::BodyConstants::keep_min, {0, 5}},
    Named{"grind", &domain::BodyConstants::grind, {0, 0.9}},
    Named{"finish_reps", &domain::BodyConstants::finish_reps, {0, 20}},
    Named{"shortest_break", &domain::BodyConstants::shortest_break, {0, 60}},
    Named{"reaction", &domain::BodyConstants::reaction, {0, 10}},
    Named{"durability_from", &domain::BodyConstants::durability_from, {60, 1e5}},
    Named{"durability", &domain::BodyConstants::durability, {0, 1}}};

inline constexpr std::array prior_keys{
    Named{"cadence_sd", &domain::PriorConstants::cadence_sd, {0.01, 1}},
    Named{"recovery_sd", &domain::PriorConstants::recovery_sd, {0.01, 1}},
    Named{"transition", &domain::PriorConstants::transition, {0.5, 30}},
    Named{"transition_sd", &domain::PriorConstants::transition_sd, {0.01, 1}},
    Named{"style", &domain::PriorConstants::style, {0.05, 0.6}},
    Named{"style_sd", &domain::PriorConstants::style_sd, {0.01, 1}},
    Named{"machine_sd", &domain::PriorConstants::machine_sd, {0.01, 1}},
    Named{"knack_sd", &domain::PriorConstants::knack_sd, {0, 1}},
    Named{"pace_knack_sd", &domain::PriorConstants::pace_knack_sd, {0, 1}},
    Named{"lift_sd", &domain::PriorConstants::lift_sd, {0.05, 1}},
    Named{"cadence_training", &domain::PriorConstants::cadence_training, {-0.5, 0.5}},
    Named{"transition_training", &domain::PriorConstants::transition_training, {-1, 1}},
    Named{"machine_training", &domain::PriorConstants::machine_training, {-0.5, 0.5}},
    Named{"pull_training", &domain::PriorConstants::pull_training, {-1, 2}},
    Named{"squat_cadence", &domain::PriorConstants::squat_cadence, {-0.95, 0.95}},
    Named{"squat_push", &domain::PriorConstants::squat_push, {-0.95, 0.95}},
    Named{"squat_legs", &domain::PriorConstants::squat_legs, {-0.95, 0.95}},
    Named{"squat_machine", &domain::PriorConstants::squat_machine, {-0.95, 0.95}},
    Named{"clean_speed", &domain::PriorConstants::clean_speed, {-0.95, 0.95}},
    Named{"clean_reserve", &domain::PriorConstants::clean_reserve, {-0.95, 0.95}},
    Named{"clean_cadence", &domain::PriorConstants::clean_cadence, {-0.95, 0.95}},
    Named{"clean_push", &domain::PriorConstants::clean_push, {-0.95, 0.95}},
    Named{"clean_pull", &domain::PriorConstants::clean_pull, {-0.95, 0.95}},
    Named{"clean_legs", &domain::PriorConstants::clean_legs, {-0.95, 0.95}},
    Named{"clean_core", &domain::PriorConstants::clean_core, {-0.95, 0.95}},
    Named{"clean_recovery", &domain::PriorConstants::clean_recovery, {-0.95, 0.95}},
    Named{"clean_transition", &domain::PriorConstants::clean_transition, {-0.95, 0.95}},
    Named{"clean_machine", &domain::PriorConstants::clean_machine, {-0.95, 0.95}},
    Named{"clean_press", &domain::PriorConstants::clean_press, {-0.95, 0.95}},
    Named{"speed_recovery", &domain::PriorConstants::speed_recovery, {-0.95, 0.95}},
    Named{"speed_transition", &domain::PriorConstants::speed_transition, {-0.95, 0.95}},
    Named{"speed_machine", &domain::PriorConstants::speed_machine, {-0.95, 0.95}},
    Named{"pull_recovery", &domain::PriorConstants::pull_recovery, {-0.95, 0.95}},
    Named{"pull_transition", &domain::PriorConstants::pull_transition, {-0.95, 0.95}},
    Named{"pull_press", &domain::PriorConstants::pull_press, {-0.95, 0.95}},
    Named{"cadence_recovery", &domain::PriorConstants::cadence_recovery, {-0.95, 0.95}},
    Named{"cadence_transition", &domain::PriorConstants::cadence_transition, {-0.95, 0.95}}};

inline constexpr std::array mark_keys{Named{"run", &domain::MarkNoise::run, {0.002, 0.5}},
                                      Named{"short_run", &domain::MarkNoise::short_run, {0.002, 0.5}},
                                      Named{"machine", &domain::MarkNoise::machine, {0.002, 0.5}},
                                      Named{"set", &domain::MarkNoise::set, {0.01, 1}},
                                      Named{"any_style", &domain::MarkNoise::any_style, {0.01, 1}},
                                      Named{"any_style_rep", &domain::MarkNoise::any_style_rep, {0, 20}},
                                      Named{"set_rep", &domain::MarkNoise::set_rep, {0.05, 3}},
                                      Named{"timed_reps", &domain::MarkNoise::timed_reps, {0.01, 1}},
                                      Named{"hold", &domain::MarkNoise::hold, {0.01, 1}},
                                      Named{"load", &domain::MarkNoise::load, {0.005, 0.5}},
                                      Named{"load_rep", &domain::MarkNoise::load_rep, {0, 0.1}},
                                      Named{"oxygen", &domain::MarkNoise::oxygen, {0.005, 0.5}}};

inline constexpr std::array<std::string_view, domain::muscle_group_count> group_names{"push", "pull", "legs",
                                                                                      "core", "grip"};

struct GroupNamed {
  std::string_view key;
  std::array<double, domain::muscle_group_count> domain::BodyConstants::* member;
  Bounds bounds;
};
inline constexpr std::array group_keys{
    GroupNamed{"fast_share", &domain::BodyConstants::fast_share, {0, 1}},
    GroupNamed{"fast_time", &domain::BodyConstants::fast_time, {1, 3600}},
    GroupNamed{"slow_time", &domain::BodyConstants::slow_time, {1, 36000}}};

}  // namespace repwright::store
