#include "sheets/clock.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace repwright::sheets {

std::string clock_text(double seconds) {
  const auto whole = static_cast<long long>(std::llround(std::max(0.0, seconds)));
  if (whole >= 3600) return fmt::format("{}:{:02}:{:02}", whole / 3600, whole / 60 % 60, whole % 60);
  return fmt::format("{}:{:02}", whole / 60, whole % 60);
}

}  // namespace repwright::sheets
