#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "body/forecast_line.hpp"
#include "body/knowledge.hpp"

/// What a score tells of a body: docs/models/body.md, 'Learning'. The forecasts of drawn bodies say how the
/// score depends on the body; a line through them is conditioned on the score by Bayes' rule, as in the
/// ensemble Kalman inversion of Iglesias, Law & Stuart 2013 (Inverse Problems 29:045001), with the regression
/// in place of sample covariances: exact where the logarithm of a score is linear and all noise normal.
namespace repwright::body {

/// One score beside what drawn bodies would have scored on a day of their own: natural logarithms.
struct ScoreSeen {
  double seen = 0;
  std::vector<double> forecasts;          // of the drawn bodies in turn
  std::optional<std::size_t> level = {};  // of the piece; nothing the first time
  double day_sd = 0;  // one body on different days; 0: what a line through the forecasts leaves
  /// The clock stopped the piece: the truth is at or beyond `seen`.
  bool beyond = false;
  double model_sd = first_doubt;  // the doubt about the model, the first time
};
inline constexpr std::size_t fewest_forecasts = 2 * parameter_count;

/// What came of one score.
struct Lesson {
  double p10 = 0, p50 = 0, p90 = 0;  // of the forecast from what was known before
  double below = 0;                  // the share of the forecast below the score: even if all is right
  double expected = 0;               // of the forecast as a normal one
  double sd = 0;                     // of that, model and day included
  double weight = 0;      // of the score, from 1 down to 0 for one that cannot be believed or teaches nothing
  std::size_t level = 0;  // of the piece, from now on
};
struct Learned {
  Knowledge after;
  std::vector<Lesson> lessons;  // of the scores in turn
};

/// What is known after the scores of one day, all forecast with the bodies behind `drawn`, at least
/// `fewest_forecasts` of them. A score beyond three standard deviations counts less, soon nothing, but leaves
/// room for a second one that agrees with it: one wrong score hardly moves a body, two that agree do.
Learned learn(const Knowledge& before, const std::vector<Normals>& drawn, std::span<const ScoreSeen> scores);

}  // namespace repwright::body
