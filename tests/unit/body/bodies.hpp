#pragma once

#include <array>
#include <limits>
#include <string>

#include "body/alone.hpp"

/// The six invented profiles and the movements of the golden pieces (T11.6).
namespace repwright::body {

struct Profile {
  std::string name;
  double critical_speed, reserve_distance;
  double pull, push, squat, step, sit, burpee;
  double cadence, change;
};

inline const std::array<Profile, 6> profiles{{
    {"beginner", 2.7, 130, 2, 10, 50, 35, 25, 7, 1.10, 4},
    {"novice", 3.0, 140, 4, 18, 70, 49, 35, 12.6, 1.05, 4},
    {"intermediate", 3.4, 160, 9, 32, 110, 77, 55, 22.4, 1.00, 4},
    {"good", 3.8, 170, 15, 45, 150, 105, 75, 31.5, .90, 4},
    {"advanced", 4.2, 180, 25, 65, 220, 154, 110, 45.5, .75, 2.5},
    {"elite", 4.6, 190, 40, 90, 300, 210, 150, 63, .65, 2.5},
}};

inline Body body_of(const Profile& p) {
  Body body;
  body.critical_speed = p.critical_speed;
  body.reserve_distance = p.reserve_distance;
  body.top_speed = 2.25 * p.critical_speed;
  body.cadence = p.cadence;
  body.transition = p.change;
  return body;
}

/// A row of the movement table: own group, seconds, oxygen, mode, other groups.
struct Row {
  Group group;
  double brisk, cost, mode;
  double push = 0, legs = 0, core = 0;
};
inline constexpr Row pull_up{Group::Pull, 2.0, 1.4, .80, 0, 0, .1};
inline constexpr Row push_up{Group::Push, 1.5, 1.0, .80, 0, 0, .3};
inline constexpr Row squat{Group::Legs, 1.6, .95, .95};
inline constexpr Row sit_up{Group::Core, 2.2, .6, .80};
inline constexpr Row burpee{Group::Push, 3.2, 2.4, 1.0, 0, .5, .2};
inline constexpr Row step_up{Group::Legs, 2.2, 1.2, .95, 0, 0, .1};

inline Effort reps(const Row& row, double best, double cadence) {
  Effort effort;
  effort.group = row.group;
  effort.theta = 1 / (1 + best / 30);
  effort.drain = effort.theta / 30;
  effort.weight = {row.push, 0, row.legs, row.core, 0};
  effort.weight[index_of(row.group)] = 1;
  effort.brisk = effort.sustained = row.brisk * cadence;
  effort.cost = row.cost;
  effort.mode = row.mode;
  effort.best = best;
  return effort;
}

inline Effort running() {
  Effort effort;
  effort.kind = Effort::Kind::Run;
  effort.weight = {0, 0, .6, .2, 0};
  effort.mode = 1;
  effort.best = std::numeric_limits<double>::infinity();
  return effort;
}

}  // namespace repwright::body
