#include "body/knowledge.hpp"

#include <algorithm>

namespace repwright::body {

namespace {

using P = Parameter;

/// The standard deviation that a week of drift adds; an idle week takes as much off the mean.
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

/// What a change of the parameters does to the levels.
void carry_along(PieceLevels& levels, const Normals& more, const Normals& lost) {
  for (std::size_t q = 0; q < levels.mean.size(); ++q)
    for (std::size_t i = 0; i < parameter_count; ++i) {
      const double along = levels.slope[q].at(i) * more.at(i);
      levels.mean[q] -= levels.slope[q].at(i) * lost.at(i);
      levels.with_body[q].at(i) += along;
      for (std::size_t r = 0; r < levels.mean.size(); ++r)
        levels.covariance[q][r] += along * levels.slope[r].at(i);
    }
}

}  // namespace

Knowledge after_days(const Knowledge& known, const BodyEstimate& unknown, double days) {
  constexpr double idle = 60, most_lost = .05;
  Knowledge out = known;
  const double idle_weeks = std::max(0.0, days - idle) / 7;
  Normals more{}, lost{};  // variance of each parameter, and of its middle
  for (std::size_t i = 0; i < parameter_count; ++i) {
    const P parameter{static_cast<std::uint8_t>(i)};
    const double by = weekly(parameter);
    double& variance = out.body.parameters.covariance.at(i).at(i);
    const double grown =
        std::min(unknown.parameters.covariance.at(i).at(i), variance + by * by * std::max(0.0, days) / 7);
    more.at(i) = std::max(0.0, grown - variance);
    if (tires(parameter)) lost.at(i) = std::min(most_lost, by * idle_weeks);
    variance += more.at(i);
    out.body.parameters.mean.at(i) -= lost.at(i);
  }
  out.body.spread = cholesky<parameter_count>(out.body.parameters.covariance);
  carry_along(out.levels, more, lost);
  return out;
}

Normals normals_behind(base::Seed seed, std::uint64_t run, std::uint64_t person) {
  base::Stream stream(seed, run, person, base::Purpose::Body);
  Normals normals{};
  for (double& z : normals) z = std::clamp(stream.normal(), -3.0, 3.0);
  return normals;
}

std::uint64_t knack_behind(base::Seed seed, std::uint64_t run, std::uint64_t person) {
  return base::Stream(seed, run, person, base::Purpose::Knack).bits_at(0) | 1U;  // never that of the middle
}

Body body_behind(const Normals& normals, const BodyEstimate& estimate, const Constants& constants) {
  Normals point = estimate.parameters.mean;
  for (std::size_t i = 0; i < parameter_count; ++i)
    for (std::size_t j = 0; j <= i; ++j) point.at(i) += estimate.spread.at(i).at(j) * normals.at(j);
  return body_at(point, estimate.pull, constants);
}

DrawnBody draw_told(const BodyEstimate& estimate, base::Seed seed, std::uint64_t run, std::uint64_t person,
                    const Constants& constants) {
  DrawnBody out{.normals = normals_behind(seed, run, person), .body = {}};
  out.body = body_behind(out.normals, estimate, constants);
  out.body.knack = estimate.knack.value_or(knack_behind(seed, run, person));
  return out;
}

}  // namespace repwright::body
