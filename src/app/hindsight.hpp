#pragma once

#include <string>
#include <vector>

#include "app/gym_learning.hpp"

/// How good past forecasts were.
namespace repwright::app {

/// Errors are shares: of the score, up or down alike. A guess that could not be made is left out of its
/// column.
struct HindsightRow {
  std::string of;  // what the row is of: a piece's board, a person, "1st score"
  int scores = 0;
  double bias = 0;  // of the middle forecast over the score, less one
  double median_error = 0;
  double held = 0;  // share of the scores within the 80 % range
  /// The same scores, guessed plainly, and the forecasts' own error on those.
  int compared = 0;
  double forecast_error = 0, last_error = 0, group_error = 0;
};

struct Hindsight {
  HindsightRow all;
  std::vector<HindsightRow> by_count;  // by how many scores of the person had been seen
  std::vector<HindsightRow> by_board, by_person;
};

/// Sums up the forecasts; days marked ill, hot or easy are left out. `names` says a person's name.
Hindsight hindsight(const std::vector<ForecastScore>& forecasts, const std::vector<domain::Person>& people);

}  // namespace repwright::app
