#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "body/estimate.hpp"

/// What a score tells of a body: docs/models/body.md, 'Learning'. The forecasts of drawn bodies say how the
/// score depends on the body; a line through them is conditioned on the score by Bayes' rule, as in the
/// ensemble Kalman inversion of Iglesias, Law & Stuart 2013 (Inverse Problems 29:045001), with the regression
/// in place of sample covariances: exact where the logarithm of a score is linear and all noise normal.
namespace repwright::body {

/// How a body of the estimate was drawn: independent standard normals.
using Normals = std::array<double, parameter_count>;

/// One body of the distribution with the normals behind it; the body is that of `draw` for the same numbers.
struct DrawnBody {
  Normals normals{};
  Body body;
};
DrawnBody draw_told(const BodyEstimate& estimate, base::Seed seed, std::uint64_t run, std::uint64_t person,
                    const Constants& constants);

/// What the model is wrong by for one person in one piece, as far as it is known: natural logarithms. After
/// Kennedy & O'Hagan 2001 (J. R. Stat. Soc. B 63:425-464), a constant of person and piece in place of a
/// process.
struct ModelFault {
  double mean = 0;
  double sd = .08;  // of a piece never scored before: a guess
};

/// One score beside what drawn bodies would have scored on a day of their own: natural logarithms.
struct ScoreSeen {
  double seen = 0;
  std::vector<double> forecasts;  // of the drawn bodies in turn
  ModelFault fault = {};          // before the score
  double day_sd = 0;              // one body on different days; 0: what a line through the forecasts leaves
  /// The clock stopped the piece: the truth is at or beyond `seen`.
  bool beyond = false;
};
inline constexpr std::size_t fewest_forecasts = 2 * parameter_count;

/// What came of one score.
struct Lesson {
  double expected = 0;    // logarithm of the forecast in the middle
  double sd = .08;        // of the forecast, model and day included
  double weight = 0;      // of the score, from 1 down to 0 for one that cannot be believed or teaches nothing
  ModelFault fault = {};  // after the score
};
struct Learned {
  BodyEstimate after;
  std::vector<Lesson> lessons;  // of the scores in turn
};

/// The estimate after the scores of one day, all forecast with the bodies behind `drawn`, at least
/// `fewest_forecasts` of them. A score far off counts less (Student's t with four degrees of freedom): one
/// wrong score hardly moves a body, two that agree do.
Learned learn(const BodyEstimate& before, const std::vector<Normals>& drawn,
              std::span<const ScoreSeen> scores);

/// The estimate so many days later: the doubt grows (per root of a week .005 of the logarithm of the critical
/// speed, .01 of the others), never beyond that of `unknown`, the same person without marks and scores. After
/// two months without a score the capacities fall by .01 and .02 a week, by .10 at most (a guess).
BodyEstimate after_days(const BodyEstimate& known, const BodyEstimate& unknown, double days);

}  // namespace repwright::body
