#pragma once

#include <string>

#include "domain/fit_plan.hpp"

namespace repwright::sheets {

/// Fits as a coach reads them in a terminal: per piece what it intends, how many are inside as chalked and
/// fitted, then each person with what they do, what to expect, and one step either way. UTF-8, ends with a
/// line feed.
std::string fit_text(const domain::FitPlan& plan);

}  // namespace repwright::sheets
