#pragma once

#include <string>

#include "calibration/forecasts.hpp"

/// How well forecasts agree with what was scored.
namespace repwright::calibration {

struct Agreement {
  std::size_t people = 0;  // with a forecast
  std::size_t cannot = 0;  // forecast as not to be done at all
  double bias = 1;         // forecast over scored, geometric mean
  double log_rmse = 0;     // after the bias is taken out
  double alone = 0;        // of the mean alone: standard deviation of the scored logarithms
  double rank = 0;         // Spearman's correlation
  double spread = 0;       // standard deviation of the forecast logarithms over the scored ones'
};

/// One piece (0 to 4) and one sex; what cannot be done is counted and left out of the figures.
Agreement agreement(const std::vector<Profile>& profiles, const std::vector<Forecast>& forecasts,
                    std::size_t piece, domain::Sex sex);

/// How well drawn forecasts, [profile][draw], agree with what was scored.
struct Coverage {
  double held = 0;    // share of scores within the middle 80 % of the person's draws
  double spread = 0;  // standard deviation of the logarithms of all draws over that of the scores
};
Coverage coverage(const std::vector<Profile>& profiles, const std::vector<std::vector<Forecast>>& drawn,
                  std::size_t piece, domain::Sex sex);

/// A line per piece and sex of `coverage`.
std::string coverage_table(const std::vector<Profile>& profiles,
                           const std::vector<std::vector<Forecast>>& drawn);

/// A line per piece and sex of `agreement`.
std::string agreement_table(const std::vector<Profile>& profiles, const std::vector<Forecast>& forecasts);

}  // namespace repwright::calibration
