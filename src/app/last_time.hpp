#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "domain/score.hpp"

namespace repwright::app {

/// How one piece went for those who scored in it. The scores stand as they were entered; who was stopped by
/// the cap comes after everybody who was not.
struct PieceLastTime {
  std::string piece;  // as the scores name it; empty: the board has one
  int people = 0;
  int capped = 0;
  std::string best, middle, last;
  std::optional<double> effort;  // mean RPE of those who said one
  bool operator==(const PieceLastTime&) const = default;
};
/// The last day on which a board was done.
struct LastTime {
  std::chrono::year_month_day date{};
  std::vector<PieceLastTime> pieces;  // in the order of the score sheet
  bool operator==(const LastTime&) const = default;
};

/// The last day that has scores of that board; nothing if there is none. Entries that are kept as words only
/// are left out.
std::optional<LastTime> last_time(const std::vector<domain::ScoreEntry>& scores, std::string_view board_id);

}  // namespace repwright::app
