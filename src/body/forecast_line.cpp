#include "body/forecast_line.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/normal.hpp"
#include "base/statistics.hpp"

namespace repwright::body {

namespace {

constexpr std::size_t coefficient_count = parameter_count + 1;
using Coefficients = std::array<double, coefficient_count>;
using Square = std::array<Coefficients, coefficient_count>;

Coefficients row_of(const Normals& normals) {
  Coefficients row{1};
  std::ranges::copy(normals, row.begin() + 1);
  return row;
}

double at(const ForecastLine& line, const Normals& normals) {
  return std::inner_product(normals.begin(), normals.end(), line.slope.begin(), line.middle);
}

/// Sums over the forecasts, for any strength of shrinking.
struct Sums {
  Square square{};
  Coefficients right{};
  double counted = 0;  // all weights
  double even = 0;     // as many even weights would tell as much
};

Sums sums_of(const std::vector<Normals>& drawn, const std::vector<double>& forecasts,
             const std::vector<double>& weights) {
  Sums sums;
  double squares = 0;
  for (std::size_t e = 0; e < forecasts.size(); ++e) {
    const Coefficients row = row_of(drawn[e]);
    for (std::size_t i = 0; i < coefficient_count; ++i) {
      const double share = weights[e] * row.at(i);
      sums.right.at(i) += share * forecasts[e];
      for (std::size_t j = 0; j <= i; ++j) sums.square.at(i).at(j) += share * row.at(j);
    }
    sums.counted += weights[e];
    squares += weights[e] * weights[e];
  }
  sums.even = sums.counted * sums.counted / squares;
  return sums;
}

/// The middle of what the line leaves, because the few bodies that cannot do the piece are far off any line.
double left_variance(const ForecastLine& line, const std::vector<Normals>& drawn,
                     const std::vector<double>& forecasts, const std::vector<double>& weights) {
  double counted = 0, below = 0;
  std::vector<std::pair<double, double>> apart;
  for (std::size_t e = 0; e < forecasts.size(); ++e) {
    apart.emplace_back(std::abs(forecasts[e] - at(line, drawn[e])), weights[e]);
    counted += weights[e];
  }
  std::ranges::sort(apart);
  const auto middle =
      std::ranges::find_if(apart, [&](const auto& each) { return (below += each.second) >= 0.5 * counted; });
  constexpr double sd_of_middle = 1.4826;  // of a normal distribution
  const double left = sd_of_middle * middle->first;
  return left * left;
}

/// What keeps each slope small, from how large it came out and how sure it is: relevance is told apart from
/// luck (M. E. Tipping 2001, J. Machine Learning Research 1:211-244, from memory).
Normals shrinkage(const ForecastLine& line, const Square& lower, const Normals& before) {
  constexpr double weakest = .1, strongest = 1e6, least = 1e-10;
  Normals out{};
  for (std::size_t i = 0; i < parameter_count; ++i) {
    Coefficients unit{};
    unit.at(i + 1) = 1;
    const double inverse = solved(lower, unit).at(i + 1);
    const double told = std::clamp(1 - before.at(i) * inverse, 0.0, 1.0);
    const double squared = std::max(least, line.slope.at(i) * line.slope.at(i));
    out.at(i) = std::clamp(told * line.left_variance / squared, weakest, strongest);
  }
  return out;
}

ForecastLine line_through(const std::vector<Normals>& drawn, const std::vector<double>& forecasts,
                          const std::vector<double>& weights) {
  constexpr int rounds = 8;
  const Sums sums = sums_of(drawn, forecasts, weights);
  Normals ridge{};
  ridge.fill(.5);
  ForecastLine line;
  for (int round = 0; round < rounds; ++round) {
    Square square = sums.square;
    for (std::size_t i = 0; i < parameter_count; ++i) square.at(i + 1).at(i + 1) += ridge.at(i);
    const Square lower = cholesky<coefficient_count>(square);
    const Coefficients fitted = solved(lower, sums.right);
    line.middle = fitted[0];
    std::copy(fitted.begin() + 1, fitted.end(), line.slope.begin());
    double told = 0;  // so many slopes the forecasts tell themselves
    for (const double each : ridge) told += sums.counted / (sums.counted + each);
    line.left_variance = left_variance(line, drawn, forecasts, weights) / std::max(.2, 1 - told / sums.even);
    ridge = shrinkage(line, lower, ridge);
  }
  return line;
}

/// A drawn body that cannot do the piece scores next to nothing: how little tells nothing of the others.
std::vector<double> tamed(std::vector<double> forecasts) {
  constexpr double furthest = 1;
  const double middle = base::quantile(forecasts, .5);
  for (double& each : forecasts) each = std::clamp(each, middle - furthest, middle + furthest);
  return forecasts;
}

}  // namespace

Normals whitened(const BodyEstimate& body, Normals right) {
  for (std::size_t i = 0; i < parameter_count; ++i) {
    for (std::size_t k = 0; k < i; ++k) right.at(i) -= body.spread.at(i).at(k) * right.at(k);
    right.at(i) = body.spread.at(i).at(i) > 0 ? right.at(i) / body.spread.at(i).at(i) : 0;
  }
  return right;
}

Normals by_parameters(const BodyEstimate& body, Normals slope) {
  for (std::size_t i = parameter_count; i-- > 0;) {
    for (std::size_t k = i + 1; k < parameter_count; ++k)
      slope.at(i) -= body.spread.at(k).at(i) * slope.at(k);
    slope.at(i) = body.spread.at(i).at(i) > 0 ? slope.at(i) / body.spread.at(i).at(i) : 0;
  }
  return slope;
}

Normals by_normals(const BodyEstimate& body, const Normals& slope) {
  Normals out{};
  for (std::size_t i = 0; i < parameter_count; ++i)
    for (std::size_t k = 0; k <= i; ++k) out.at(k) += body.spread.at(i).at(k) * slope.at(i);
  return out;
}

ForecastLine line_near(const std::vector<Normals>& drawn, const std::vector<double>& forecasts, double seen) {
  const std::vector<double> moderate = tamed(forecasts);
  std::vector<double> weights(moderate.size(), 1);
  const ForecastLine first = line_through(drawn, moderate, weights);
  // Near by the first line, not by the forecasts themselves, which would choose the luck as well.
  std::vector<double> fitted;
  fitted.reserve(drawn.size());
  for (const Normals& normals : drawn) fitted.push_back(at(first, normals));
  const double low = base::quantile(fitted, .15), high = base::quantile(fitted, .85);
  const double centre = std::clamp(seen, low, high);
  const double width = std::max(.05, .6 * (high - low));
  for (std::size_t e = 0; e < fitted.size(); ++e) {
    const double off = (fitted[e] - centre) / width;
    weights[e] = std::max(.02, base::exp(-.5 * off * off));
  }
  return line_through(drawn, moderate, weights);
}

double ForecastSpread::below(double score) const {
  double sum = 0;
  for (const double centre : centres) sum += base::normal_cdf((score - centre) / sd);
  return sum / static_cast<double>(centres.size());
}

double ForecastSpread::quantile(double p) const {
  constexpr double widest = 4, close = 1e-4;
  const auto [lowest, highest] = std::ranges::minmax(centres);
  double low = lowest - widest * sd, high = highest + widest * sd;
  while (high - low > close) {
    const double middle = .5 * (low + high);
    (below(middle) < p ? low : high) = middle;
  }
  return .5 * (low + high);
}

}  // namespace repwright::body
