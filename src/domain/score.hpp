#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/quantity.hpp"
#include "domain/ids.hpp"

/// What a person scored on a day, as entered and as understood.
namespace repwright::domain {

struct TimeScore {
  base::Duration time;
  bool operator==(const TimeScore&) const = default;
};
struct RoundsScore {
  int rounds = 0;
  int reps = 0;
  bool operator==(const RoundsScore&) const = default;
};
struct RepsScore {
  double reps = 0;
  bool operator==(const RepsScore&) const = default;
};
struct LoadScore {
  base::Mass load;
  bool operator==(const LoadScore&) const = default;
};
struct DistanceScore {
  base::Length distance;
  bool operator==(const DistanceScore&) const = default;
};
struct KcalScore {
  double kcal = 0;
  bool operator==(const KcalScore&) const = default;
};
/// Not finished when the cap came: slower than the cap, never equal to it. What was done by then, if said.
struct CappedScore {
  std::optional<base::Duration> cap;
  std::optional<RoundsScore> done;
  bool operator==(const CappedScore&) const = default;
};
/// Nothing (`monostate`) for an entry that is kept as words: it teaches nothing.
using ScoreValue = std::variant<std::monostate, TimeScore, RoundsScore, RepsScore, LoadScore, DistanceScore,
                                KcalScore, CappedScore>;

/// A day that must not teach: ill, in the heat, or easy by choice.
enum class DayFlag : std::uint8_t { None, Ill, Hot, Easy };

/// One line of the score sheet. The same line may stand for a team: then each member has it.
struct ScoreEntry {
  std::chrono::year_month_day date{};
  std::string class_id;  // empty: none known
  std::string board_id;
  std::string piece;  // its title, letter or number; empty: the board has one
  PersonId person;
  std::string text;  // as entered
  ScoreValue value;  // as `read_score(text)` understands it
  std::string version;
  std::optional<double> effort;  // RPE, 0 to 10
  DayFlag flag = DayFlag::None;
  std::string entered_by;
  std::string key;  // made by who sent it, so that it may be sent twice; empty: none
  bool operator==(const ScoreEntry&) const = default;
};

/// "22:10", "4+12", "3 rds + 40", "44", "61.5 kg", "154 lb", "2400 m", "5,2 km", "83 cal", "cap, 3 rds + 40",
/// "cap 34:00": case and blanks do not matter. A bare count is repetitions. `monostate` for anything else.
ScoreValue read_score(std::string_view entered);

}  // namespace repwright::domain
