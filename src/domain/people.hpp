#pragma once

#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/quantity.hpp"
#include "domain/ids.hpp"

namespace repwright::domain {

enum class Sex : std::uint8_t { Unsaid, Female, Male };  // 'x' and empty are Unsaid

/// A distance covered as fast as possible: `run 400 m`, `row 2000 m`.
struct TimedDistance {
  MovementId movement;
  base::Length distance;
  base::Duration time;
  bool operator==(const TimedDistance&) const = default;
};
/// The largest unbroken set: `max push-up`, `max pull-up any style`.
struct BestSet {
  MovementId movement;
  double reps = 0;
  bool any_style = false;  // a swing may have helped
  bool operator==(const BestSet&) const = default;
};
/// Repetitions inside a window: `push-up in 2:00`.
struct TimedReps {
  MovementId movement;
  base::Duration window;
  double reps = 0;
  bool operator==(const TimedReps&) const = default;
};
/// The longest hold: `max plank`.
struct BestHold {
  MovementId movement;
  base::Duration time;
  bool operator==(const BestHold&) const = default;
};
/// The heaviest load moved `reps` times in a row: `1rm back squat`, `5rm deadlift`.
struct BestLoad {
  MovementId movement;
  base::Mass load;
  int reps = 1;
  bool operator==(const BestLoad&) const = default;
};
/// Measured maximal oxygen uptake, ml/kg/min.
struct AerobicPeak {
  double ml_kg_min = 0;
  bool operator==(const AerobicPeak&) const = default;
};
using Mark = std::variant<TimedDistance, BestSet, TimedReps, BestHold, BestLoad, AerobicPeak>;

/// What a person leaves out for now. `action` is what the floor sees; there is no field for a reason.
struct Limit {
  LimitId limit;
  std::string action;
  std::optional<std::chrono::year_month_day> until;
  bool operator==(const Limit&) const = default;
};

struct Person {
  PersonId id;
  std::string name;
  Sex sex = Sex::Unsaid;
  std::optional<double> age;  // years on the day of the class
  std::optional<int> birth_year;
  std::optional<base::Mass> mass;
  std::optional<base::Length> height;
  std::optional<double> training_years;
  std::vector<Mark> marks;
  std::vector<Limit> limits;
  std::vector<std::string> attends;            // mon, tue ...
  std::map<std::string, MovementId> versions;  // standing version by written movement or class word
  bool unknown = false;                        // filled up from the house prior by a head-count
  bool operator==(const Person&) const = default;
};

/// The limits that hold on that day; every one if no day is known.
std::vector<Limit> limits_on(const Person& person, std::optional<std::chrono::year_month_day> day);

}  // namespace repwright::domain
