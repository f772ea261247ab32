#pragma once

#include <string>
#include <vector>

/// The same session at another place.
namespace repwright::domain {

/// One line of the board and what stands for it there; equal where the line can stay.
struct AwayLine {
  std::string written, away;
  bool operator==(const AwayLine&) const = default;
};
/// Seconds of work for one person, by the first pattern of each movement.
struct PatternSeconds {
  std::string pattern;
  double here_s = 0, away_s = 0;
  bool operator==(const PatternSeconds&) const = default;
};
struct AwayPlan {
  std::string text;  // the board to send, as chalk
  std::vector<AwayLine> lines;
  std::vector<PatternSeconds> patterns;
  double here_s = 0, away_s = 0;  // from the first start signal to the end
  std::vector<std::string> notes;
  bool operator==(const AwayPlan&) const = default;
};

}  // namespace repwright::domain
