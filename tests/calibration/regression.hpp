#pragma once

#include "calibration/forecasts.hpp"

/// The plain baseline that the body model is held against: it has seen the piece, the model has not.
namespace repwright::calibration {

/// Each piece of each fold of `part_of` by ordinary least squares of its logarithm on the marks (logarithms),
/// mass, height, age and training years of the other folds, men and women apart. In the order of `profiles`.
std::vector<Forecast> regressed(const std::vector<Profile>& profiles);

}  // namespace repwright::calibration
