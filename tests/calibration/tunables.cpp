#include "calibration/tunables.hpp"

#include <algorithm>
#include <cmath>

#include "base/require.hpp"
#include "store/body_keys.hpp"

namespace repwright::calibration {

namespace {

Tunable correlation(const char* key, double hand_set) {
  return {"prior", key, hand_set, .25, false};
}

}  // namespace

const std::vector<Tunable>& tunables() {
  static const std::vector<Tunable> all{
      {"model", "quickness", .5, .3, false},
      {"model", "breathless", .3, .3, false},
      {"model", "grind", .25, .06, false},
      {"model", "lightness", 1, .4, false},
      {"model", "fade", 0.4, .3},
      {"model", "reserve_recovery", 2, .25},
      {"model", "recovery_drag", 0.3, .4},
      {"model", "leg_drag", 0.1, .4},
      {"model", "keep_share", 0.15, .3},
      {"model", "keep_min", 0.3, .4},
      {"model", "lift_cost", 2.7, .15},
      {"model", "other_group_recovery", 0.9, .08},
      {"model", "shortest_spread", 60, .2},
      {"model.fast_time", "push", 60, .3},
      {"model.fast_time", "pull", 60, .3},
      {"model.fast_time", "legs", 30, .3},
      {"model.fast_time", "core", 40, .3},
      {"model.slow_time", "push", 200, .3},
      {"model.slow_time", "pull", 200, .3},
      {"model.slow_time", "legs", 300, .3},
      {"marks", "run", 0.02, 1},
      {"marks", "short_run", 0.03, .7},
      {"marks", "any_style", 0.25, .7},
      {"marks", "any_style_rep", 2, .7},
      {"marks", "load", 0.05, .5},
      {"prior", "cadence_sd", 0.12, .3},
      {"prior", "recovery_sd", 0.25, .3},
      {"prior", "transition", 4, .3},
      {"prior", "transition_sd", 0.25, .4},
      {"prior", "style", 0.2, .3},
      {"prior", "style_sd", 0.25, .3},
      {"prior", "machine_sd", 0.1, .3},
      {"prior", "lift_sd", 0.24, .2},
      {"prior", "knack_sd", 0.15, .3},
      {"prior", "pace_knack_sd", 0.1, .3},
      {"prior", "cadence_training", -0.03, .05, false},
      {"prior", "transition_training", -0.2, .15, false},
      {"prior", "machine_training", 0, .06, false},
      {"prior", "pull_training", .25, .15, false},
      correlation("squat_cadence", -.20),
      correlation("squat_push", .25),
      correlation("squat_legs", .20),
      correlation("squat_machine", .25),
      correlation("clean_speed", 0),
      correlation("clean_reserve", 0),
      correlation("clean_cadence", -0.2),
      correlation("clean_push", 0.25),
      correlation("clean_pull", 0.25),
      correlation("clean_legs", 0.2),
      correlation("clean_core", 0),
      correlation("clean_recovery", 0),
      correlation("clean_transition", 0),
      correlation("clean_machine", 0.25),
      correlation("clean_press", 0.7),
      correlation("speed_recovery", -0.25),
      correlation("speed_transition", -0.3),
      correlation("speed_machine", 0),
      correlation("pull_recovery", 0),
      correlation("pull_transition", -0.2),
      correlation("pull_press", 0.25),
      correlation("cadence_recovery", 0.15),
      correlation("cadence_transition", 0.35),
      {"kip-pull-up", "ratio", 1.7, .2},
      {"kip-pull-up", "cost", 1.3, .25},
      {"kip-pull-up", "mode", 0.9, .04},
      {"kb-swing", "of", 0.42, .2},
      {"bb-squat-press", "ratio", 0.75, .3},
      {"bb-squat-press", "of", 1.35, .15},
      {"bb-squat-press", "cost", 1.3, .3},
      {"bb-clean-and-jerk", "cost", 1.8, .2},
      {"bb-clean-and-jerk", "mode", 0.97, .02},
      {"bb-high-pull", "of", 1.1, .15},
      {"mb-wall-shot", "cost", 1.35, .15},
      {"mb-wall-shot", "of", 0.62, .2},
      {"mb-wall-shot", "ratio", 0.8, .2},
      {"box-jump", "cost", 1.5, .15},
      {"box-jump", "ratio", 0.4, .2},
      {"knees-to-elbows", "ratio", 0.36, .25},
      {"jumping-pull-up", "share", 0.55, .15},
      {"burpee", "cost", 2.4, .1},
      {"burpee", "ratio", 0.7, .2},
      {"walking-lunge", "ratio", 0.8, .2},
      {"back-extension", "ratio", 0.9, .2},
      {"double-under", "ratio", 0.55, .3},
      {"squat-thrust", "cost", 2.1, .15},
  };
  return all;
}

namespace {

template <class Keys, class Owner>
double* member_of(const Keys& keys, Owner& owner, const std::string& key) {
  const auto found = std::ranges::find(keys, key, [](const auto& named) { return named.key; });
  return found != keys.end() ? &(owner.*found->member) : nullptr;
}

double* movement_number(domain::MovementCost& row, const std::string& key) {
  if (key == "cost") return &row.cost;
  if (key == "mode") return &row.mode;
  if (key == "of") return &row.of;
  if (key == "ratio") return &*row.ratio;
  return key == "share" ? &*row.share : nullptr;
}

double* group_number(domain::BodyConstants& constants, const std::string& table, const std::string& group) {
  for (const store::GroupNamed& named : store::group_keys)
    if (table == "model." + std::string(named.key)) {
      const auto at = std::ranges::find(store::group_names, group) - store::group_names.begin();
      return &(constants.*named.member).at(static_cast<std::size_t>(at));
    }
  return nullptr;
}

double* find(domain::BodyConstants& constants, const Tunable& tunable) {
  if (tunable.table == "model") return member_of(store::model_keys, constants, tunable.key);
  if (tunable.table == "prior") return member_of(store::prior_keys, constants.prior, tunable.key);
  if (tunable.table == "marks") return member_of(store::mark_keys, constants.marks, tunable.key);
  if (double* number = group_number(constants, tunable.table, tunable.key)) return number;
  const auto row = constants.movements.find(domain::MovementId{tunable.table});
  return row != constants.movements.end() ? movement_number(row->second, tunable.key) : nullptr;
}

double within_allowed(const Tunable& tunable, double value) {
  if (tunable.key == "mode") return std::clamp(value, .3, 1.0);
  if (tunable.key == "other_group_recovery") return std::clamp(value, 0.0, 1.0);
  if (tunable.key == "grind") return std::clamp(value, 0.0, .9);
  if (tunable.key == "lightness") return std::clamp(value, 0.0, 3.0);
  if (tunable.key == "quickness" || tunable.key == "breathless") return std::clamp(value, 0.0, 1.0);
  return tunable.table == "prior" && !tunable.logarithmic ? std::clamp(value, -.9, .9) : value;
}

}  // namespace

double& constant_of(domain::BodyConstants& constants, const Tunable& tunable) {
  double* number = find(constants, tunable);
  base::require(number != nullptr, "a tunable names a constant that there is");
  return *number;
}

domain::BodyConstants moved(const domain::BodyConstants& base, const std::vector<double>& deviations) {
  domain::BodyConstants out = base;
  for (std::size_t i = 0; i < tunables().size(); ++i) {
    const Tunable& tunable = tunables()[i];
    double& number = constant_of(out, tunable);
    const double by = deviations.at(i) * tunable.plausible;
    number = within_allowed(tunable,
                            tunable.logarithmic ? tunable.hand_set * std::exp(by) : tunable.hand_set + by);
  }
  return out;
}

std::vector<double> deviations_of(domain::BodyConstants constants) {
  std::vector<double> out;
  for (const Tunable& tunable : tunables()) {
    const double is = constant_of(constants, tunable);
    out.push_back((tunable.logarithmic ? std::log(is / tunable.hand_set) : is - tunable.hand_set) /
                  tunable.plausible);
  }
  return out;
}

}  // namespace repwright::calibration
