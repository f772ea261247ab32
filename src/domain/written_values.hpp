#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

#include "base/quantity.hpp"

/// Numbers, times and dates as people write them in cells, and back. Every reader takes any bytes and gives
/// nothing for what is not wholly of its form; blanks around are the caller's to trim.
namespace repwright::domain {

/// Without the blanks (and hard spaces) around.
std::string_view trimmed(std::string_view text);
/// A to Z made small; other letters as they are.
std::string lowered(std::string_view text);

/// "12", "-3", "7.5", "7,5". Up to 24 characters, no exponent, no thousands mark.
std::optional<double> read_number(std::string_view text);
/// The shortest digits that read back as the same number.
std::string write_number(double value);

/// To the whole millisecond, so that what is written reads back the same.
base::Duration to_millisecond(base::Duration time);
/// To the whole millimetre.
base::Length to_millimetre(base::Length length);

/// Digits alone, up to nine.
std::optional<int> read_count(std::string_view text);

/// "m:ss" or "h:mm:ss", seconds below 60 with up to three decimals; minutes may pass 59 only in "m:ss".
std::optional<base::Duration> read_clock(std::string_view text);
/// "m:ss" or, from an hour on, "h:mm:ss"; decimals only where needed, to the millisecond.
std::string write_clock(base::Duration time);

/// "2027-05-31", a day that exists.
std::optional<std::chrono::year_month_day> read_date(std::string_view text);
std::string write_date(std::chrono::year_month_day day);

/// "09:00" as minutes of the day.
std::optional<int> read_time_of_day(std::string_view text);
std::string write_time_of_day(int minute);

}  // namespace repwright::domain
