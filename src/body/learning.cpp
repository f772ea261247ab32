#include "body/learning.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/require.hpp"
#include "base/statistics.hpp"

namespace repwright::body {

namespace {

using P = Parameter;
constexpr std::size_t coefficient_count = parameter_count + 1;
using Coefficients = std::array<double, coefficient_count>;

/// A line through the forecasts: in the middle, by each normal, and what it leaves.
struct Line {
  double middle = 0;
  Normals slope{};
  double left_variance = 0;
};

/// A little of the prior that no normal matters keeps few forecasts from telling tales.
constexpr double ridge = .5;

/// However often a piece was scored, the model is not known better than this.
constexpr double least_fault = .01;

Coefficients row_of(const Normals& normals) {
  Coefficients row{1};
  std::ranges::copy(normals, row.begin() + 1);
  return row;
}

double at(const Line& line, const Normals& normals) {
  return std::inner_product(normals.begin(), normals.end(), line.slope.begin(), line.middle);
}

Line line_through(const std::vector<Normals>& drawn, const std::vector<double>& forecasts,
                  const std::vector<double>& weights) {
  std::array<Coefficients, coefficient_count> square{};
  Coefficients right{};
  for (std::size_t e = 0; e < forecasts.size(); ++e) {
    const Coefficients row = row_of(drawn[e]);
    for (std::size_t i = 0; i < coefficient_count; ++i) {
      right.at(i) += weights[e] * row.at(i) * forecasts[e];
      for (std::size_t j = 0; j < coefficient_count; ++j)
        square.at(i).at(j) += weights[e] * row.at(i) * row.at(j);
    }
  }
  for (std::size_t i = 1; i < coefficient_count; ++i) square.at(i).at(i) += ridge;
  const Coefficients fitted = solved(cholesky<coefficient_count>(square), right);
  Line line{.middle = fitted[0]};
  std::copy(fitted.begin() + 1, fitted.end(), line.slope.begin());
  // The middle of what it leaves, because the few bodies that cannot do the piece are far off any line.
  double counted = 0, squares = 0;
  std::vector<std::pair<double, double>> apart;
  for (std::size_t e = 0; e < forecasts.size(); ++e) {
    apart.emplace_back(std::abs(forecasts[e] - at(line, drawn[e])), weights[e]);
    counted += weights[e];
    squares += weights[e] * weights[e];
  }
  std::ranges::sort(apart);
  double below = 0;
  const auto middle =
      std::ranges::find_if(apart, [&](const auto& each) { return (below += each.second) >= 0.5 * counted; });
  constexpr double sd_of_middle = 1.4826;  // of a normal distribution
  // Unbiased as if there were so many even weights.
  const double even = counted * counted / squares;
  const double left = sd_of_middle * middle->first;
  line.left_variance = left * left / std::max(.2, 1 - static_cast<double>(parameter_count) / even);
  return line;
}

/// A line through the forecasts near what was seen: scores are curved over bodies that differ much. Near by
/// the first line, not by the forecasts themselves, which would choose the luck as well.
Line line_near(const std::vector<Normals>& drawn, const std::vector<double>& forecasts, double seen) {
  std::vector<double> weights(forecasts.size(), 1);
  const Line first = line_through(drawn, forecasts, weights);
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
  return line_through(drawn, forecasts, weights);
}

/// A drawn body that cannot do the piece scores next to nothing: how little tells nothing of the others.
std::vector<double> tamed(std::vector<double> forecasts) {
  constexpr double furthest = 1;
  const double middle = base::quantile(forecasts, .5);
  for (double& each : forecasts) each = std::clamp(each, middle - furthest, middle + furthest);
  return forecasts;
}

double weight_of(double z) {
  constexpr double freedom = 4;
  return std::min(1.0, gaussian_detail::weight_of(z, freedom));
}

double dot(const Normals& a, const Normals& b) {
  return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

Normals times(const std::array<Normals, parameter_count>& matrix, const Normals& vector) {
  Normals out{};
  for (std::size_t i = 0; i < parameter_count; ++i) out.at(i) = dot(matrix.at(i), vector);
  return out;
}

/// The estimate whose normals, those of `before`, are distributed like that.
BodyEstimate coloured(const BodyEstimate& before, const Gaussian<parameter_count>& normals) {
  BodyEstimate out = before;
  const Normals moved = times(before.spread, normals.mean);
  std::array<Normals, parameter_count> half{};  // the triangle times the covariance
  for (std::size_t i = 0; i < parameter_count; ++i) {
    out.parameters.mean.at(i) += moved.at(i);
    half.at(i) = times(normals.covariance, before.spread.at(i));
  }
  for (std::size_t i = 0; i < parameter_count; ++i)
    for (std::size_t j = 0; j < parameter_count; ++j)
      out.parameters.covariance.at(i).at(j) = dot(half.at(i), before.spread.at(j));
  out.spread = cholesky<parameter_count>(out.parameters.covariance);
  return out;
}

/// The standard deviation that a week of drift adds; an idle week takes twice as much off the mean.
double weekly(P parameter) {
  switch (parameter) {
    case P::CriticalSpeed:
      return .005;
    case P::TopSpeed:
    case P::OxygenPeak:
    case P::Style:
    case P::Mass:
      return 0;
    default:
      return .01;
  }
}

bool tires(P parameter) {
  return parameter == P::CriticalSpeed || (parameter >= P::Push && parameter <= P::Grip) ||
         (parameter >= P::SquatLift && parameter <= P::CleanLift);
}

}  // namespace

DrawnBody draw_told(const BodyEstimate& estimate, base::Seed seed, std::uint64_t run, std::uint64_t person,
                    const Constants& constants) {
  base::Stream stream(seed, run, person, base::Purpose::Body);
  DrawnBody out;
  for (double& z : out.normals) z = std::clamp(stream.normal(), -3.0, 3.0);
  Normals point = estimate.parameters.mean;
  for (std::size_t i = 0; i < parameter_count; ++i)
    for (std::size_t j = 0; j <= i; ++j) point.at(i) += estimate.spread.at(i).at(j) * out.normals.at(j);
  out.body = body_at(point, estimate.pull, constants);
  return out;
}

Learned learn(const BodyEstimate& before, const std::vector<Normals>& drawn,
              std::span<const ScoreSeen> scores) {
  base::require(drawn.size() >= fewest_forecasts, "there are forecasts enough to learn from");
  Gaussian<parameter_count> whitened;
  for (std::size_t i = 0; i < parameter_count; ++i) whitened.covariance.at(i).at(i) = 1;
  Learned out;
  for (const ScoreSeen& score : scores) {
    base::require(drawn.size() == score.forecasts.size(), "each drawn body has a forecast");
    const Line line = line_near(drawn, tamed(score.forecasts), score.seen);
    const Normals along = times(whitened.covariance, line.slope);
    const double middle = line.middle + dot(line.slope, whitened.mean) + score.fault.mean;
    const double fault_variance = score.fault.sd * score.fault.sd;
    const double noise =
        score.day_sd > 0 ? std::min(line.left_variance, score.day_sd * score.day_sd) : line.left_variance;
    const double variance = dot(line.slope, along) + noise + fault_variance;
    const double surprise = score.seen - middle;
    const bool tells = !score.beyond || surprise > 0;
    Lesson& lesson = out.lessons.emplace_back(Lesson{middle, std::sqrt(variance), 0, score.fault});
    if (!tells) continue;
    lesson.weight = weight_of(surprise / lesson.sd);
    const double share = lesson.weight / variance;
    lesson.fault.mean += fault_variance * share * surprise;
    lesson.fault.sd = std::max(least_fault, std::sqrt(fault_variance * (1 - fault_variance * share)));
    for (std::size_t i = 0; i < parameter_count; ++i) {
      whitened.mean.at(i) += along.at(i) * share * surprise;
      for (std::size_t j = 0; j < parameter_count; ++j)
        whitened.covariance.at(i).at(j) -= along.at(i) * along.at(j) * share;
    }
  }
  const bool told = std::ranges::any_of(out.lessons, [](const Lesson& lesson) { return lesson.weight > 0; });
  out.after = told ? coloured(before, whitened) : before;
  return out;
}

BodyEstimate after_days(const BodyEstimate& known, const BodyEstimate& unknown, double days) {
  constexpr double idle = 60, most_lost = .10;
  BodyEstimate out = known;
  const double idle_weeks = std::max(0.0, days - idle) / 7;
  for (std::size_t i = 0; i < parameter_count; ++i) {
    const P parameter{static_cast<std::uint8_t>(i)};
    const double by = weekly(parameter);
    double& variance = out.parameters.covariance.at(i).at(i);
    variance = std::max(variance, std::min(unknown.parameters.covariance.at(i).at(i),
                                           variance + by * by * std::max(0.0, days) / 7));
    if (tires(parameter)) out.parameters.mean.at(i) -= std::min(most_lost, 2 * by * idle_weeks);
  }
  out.spread = cholesky<parameter_count>(out.parameters.covariance);
  return out;
}

}  // namespace repwright::body
