#pragma once

#include <string>

#include "domain/team_plan.hpp"

namespace repwright::sheets {

/// Teams as a coach reads them in a terminal: who begins, who follows, what the odd team does, and how far
/// apart all come home beside the teams of neighbours. UTF-8, ends with a line feed.
std::string team_text(const domain::TeamPlan& plan);

}  // namespace repwright::sheets
