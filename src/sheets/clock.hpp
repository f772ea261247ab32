#pragma once

#include <string>

namespace repwright::sheets {

/// Seconds, rounded to whole ones, as a wall clock shows them: `12:05`, `1:02:05`. Negative ones read as
/// 0:00.
std::string clock_text(double seconds);

}  // namespace repwright::sheets
