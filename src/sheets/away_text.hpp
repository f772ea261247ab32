#pragma once

#include <string>

#include "domain/away_plan.hpp"

namespace repwright::sheets {

/// The away version as a coach reads it in a terminal: the text to send first, then what stands for what and
/// the seconds of each pattern beside those of the board. UTF-8, ends with a line feed.
std::string away_text(const domain::AwayPlan& plan);

}  // namespace repwright::sheets
