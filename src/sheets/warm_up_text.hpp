#pragma once

#include <string>

#include "domain/warm_up_plan.hpp"

namespace repwright::sheets {

/// A warm-up as a coach reads it in a terminal: drill after drill with its start, what to say and what it
/// prepares, what stays unprepared, who does what instead, then the one for late-comers and the one without
/// kit. UTF-8, ends with a line feed.
std::string warm_up_text(const domain::WarmUpPlan& plan);

}  // namespace repwright::sheets
