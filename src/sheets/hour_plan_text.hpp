#pragma once

#include <string>

#include "domain/hour_plan.hpp"

namespace repwright::sheets {

/// What to cut first and what to do with the kit between the pieces, as two sections; a section with nothing
/// in it is left out.
std::string hour_plan_text(const domain::HourPlan& plan);

}  // namespace repwright::sheets
