#pragma once

#include <string>
#include <string_view>

#include "base/quantity.hpp"
#include "base/result.hpp"

namespace repwright::base {

/// `12:05`, from an hour on `1:02:05`: to the nearest second, halves up, with `-` in front of a time below
/// zero.
std::string format_clock(Duration time);

/// The time that `m:ss` or `h:mm:ss` stands for, as people write results: minutes of `m:ss` may pass 59
/// (`75:00`); the seconds may have up to three decimals after a point or a comma (`4:32.5`).
Result<Duration> parse_clock(std::string_view text);

}  // namespace repwright::base
