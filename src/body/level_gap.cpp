#include "body/level_gap.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "body/forecast_line.hpp"

namespace repwright::body {

double LevelGap::at(const Normals& normals, double own) const {
  return std::inner_product(normals.begin(), normals.end(), along.begin(), middle + own_sd * own);
}

LevelGap gap_of(const BodyEstimate& body, const PieceLevels& levels, std::size_t level) {
  const Normals& mean = body.parameters.mean;
  const Normals& slope = levels.slope.at(level);
  LevelGap gap;
  gap.middle = levels.mean.at(level) -
               std::inner_product(mean.begin(), mean.end(), slope.begin(), levels.told.at(level));
  gap.along = whitened(body, levels.with_body.at(level));
  const double shared = std::inner_product(gap.along.begin(), gap.along.end(), gap.along.begin(), 0.0);
  gap.own_sd = std::sqrt(std::max(0.0, levels.covariance.at(level).at(level) - shared));
  const Normals told = by_normals(body, slope);
  for (std::size_t k = 0; k < parameter_count; ++k) gap.along.at(k) -= told.at(k);
  return gap;
}

}  // namespace repwright::body
