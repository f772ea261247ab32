#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/quantity.hpp"

/// Numbers and times of results as people write them in cells, and back without loss. Every reader takes any
/// bytes and gives nothing for what is not wholly of its form; blanks around are the caller's to trim.
namespace repwright::domain {

/// "12", "-3", "7.5", "7,5". Up to 24 characters, no exponent, no thousands mark.
std::optional<double> read_number(std::string_view text);
/// The shortest digits that read back as the same number.
std::string write_number(double value);

/// `base::parse_clock` on the whole millisecond, so that what is written reads back the same.
std::optional<base::Duration> read_clock(std::string_view text);
/// `base::format_clock`, but with decimals where needed, to the millisecond. Not below zero.
std::string write_clock(base::Duration time);

base::Duration to_millisecond(base::Duration time);
base::Length to_millimetre(base::Length length);

}  // namespace repwright::domain
