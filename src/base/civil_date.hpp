#pragma once

#include <array>
#include <chrono>
#include <string>
#include <string_view>

#include "base/result.hpp"

/// Dates and times of the day as people write them. No clock and no time zone: a class starts when the wall
/// clock of the gym says so.
namespace repwright::base {

/// A date of the Gregorian calendar written `2027-05-15` (ISO 8601 extended format), years 0000 to 9999.
Result<std::chrono::year_month_day> parse_date(std::string_view text);

/// `2027-05-15`. The date must exist.
std::string format_date(std::chrono::year_month_day date);

/// The minute of the day, 0 to 1439, of a time written `HH:MM` on the 24-hour clock.
Result<int> parse_time_of_day(std::string_view text);

/// `HH:MM` of a minute of the day, 0 to 1439.
std::string format_time_of_day(int minute);

/// `2027-05-15T05:50:00Z` (ISO 8601, RFC 3339), years 0000 to 9999.
std::string format_instant(std::chrono::sys_seconds instant);

/// Short names, Monday first as in ISO 8601.
inline constexpr std::array<std::string_view, 7> weekday_names{"mon", "tue", "wed", "thu",
                                                               "fri", "sat", "sun"};

/// The member of `weekday_names` for a date that exists.
std::string_view weekday_name(std::chrono::year_month_day date);

/// How many days later `to` is than `from`; negative if earlier. Both dates must exist.
int days_between(std::chrono::year_month_day from, std::chrono::year_month_day to);

}  // namespace repwright::base
