#pragma once

#include <vector>

#include "body/knowledge.hpp"

/// How a score depends on the body, seen from the scores that drawn bodies were forecast.
namespace repwright::body {

/// A straight line through the logarithms of forecast scores, by the normals behind each body.
struct ForecastLine {
  double middle = 0;  // of the body in the middle
  Normals slope{};
  double left_variance = 0;  // what the line leaves
};

/// The line near what was seen: scores are curved over bodies that differ much. The slopes are shrunk as far
/// as the forecasts themselves ask for (evidence maximisation: D. J. C. MacKay 1992, Neural Computation
/// 4:415-447), so that few forecasts tell no tales. There are as many forecasts as draws.
ForecastLine line_near(const std::vector<Normals>& drawn, const std::vector<double>& forecasts, double seen);

/// A forecast of the logarithm of a score: normal distributions around `centres`, all equally likely and
/// equally wide.
struct ForecastSpread {
  std::vector<double> centres;
  double sd = 0;

  /// Where the share `p` of it lies below.
  double quantile(double p) const;
  /// The share of it that lies below.
  double below(double score) const;
};

/// The x with L x = `right`, for the triangle of the body's spread; zero where the body has no spread.
Normals whitened(const BodyEstimate& body, Normals right);
/// The x with L' x = `slope`: how a score goes along with the parameters that goes so along with the normals.
Normals by_parameters(const BodyEstimate& body, Normals slope);
/// The other way round.
Normals by_normals(const BodyEstimate& body, const Normals& slope);

}  // namespace repwright::body
