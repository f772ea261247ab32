#include "base/civil_date.hpp"

#include "base/require.hpp"
#include "base/text.hpp"

namespace repwright::base {

namespace {

constexpr int minutes_per_hour = 60;
constexpr int minutes_per_day = 24 * minutes_per_hour;

}  // namespace

Result<std::chrono::year_month_day> parse_date(std::string_view text) {
  const bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-';
  const auto year = shaped ? parse_digits(text.substr(0, 4)) : std::nullopt;
  const auto month = shaped ? parse_digits(text.substr(5, 2)) : std::nullopt;
  const auto day = shaped ? parse_digits(text.substr(8, 2)) : std::nullopt;
  if (!year || !month || !day) {
    return failure(ErrorCode::Invalid,
                   "'" + std::string(text) + "' is not a date: write year-month-day, e.g. 2027-05-15");
  }
  const std::chrono::year_month_day date{std::chrono::year(*year),
                                         std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day))};
  if (!date.ok()) return failure(ErrorCode::Invalid, "there is no day '" + std::string(text) + "'");
  return date;
}

std::string format_date(std::chrono::year_month_day date) {
  require(date.ok(), "only a date that exists is written");
  return padded(static_cast<int>(date.year()), 4) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(date.month())), 2) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(date.day())), 2);
}

Result<int> parse_time_of_day(std::string_view text) {
  const bool shaped = text.size() == 5 && text[2] == ':';
  const auto hour = shaped ? parse_digits(text.substr(0, 2)) : std::nullopt;
  const auto minute = shaped ? parse_digits(text.substr(3, 2)) : std::nullopt;
  if (!hour || !minute || *hour > 23 || *minute > 59) {
    return failure(ErrorCode::Invalid,
                   "'" + std::string(text) + "' is not a time of the day: write 00:00 to 23:59");
  }
  return *hour * minutes_per_hour + *minute;
}

std::string format_time_of_day(int minute) {
  require(minute >= 0 && minute < minutes_per_day, "a minute of the day lies in 0 to 1439");
  return padded(minute / minutes_per_hour, 2) + ":" + padded(minute % minutes_per_hour, 2);
}

std::string format_instant(std::chrono::sys_seconds instant) {
  const auto day = std::chrono::floor<std::chrono::days>(instant);
  const auto second = static_cast<int>((instant - day).count());
  return format_date(day) + "T" + format_time_of_day(second / 60) + ":" + padded(second % 60, 2) + "Z";
}

std::string_view weekday_name(std::chrono::year_month_day date) {
  require(date.ok(), "only a date that exists has a weekday");
  return weekday_names.at(std::chrono::weekday(std::chrono::sys_days(date)).iso_encoding() - 1);
}

int days_between(std::chrono::year_month_day from, std::chrono::year_month_day to) {
  require(from.ok() && to.ok(), "only dates that exist have days between them");
  return static_cast<int>((std::chrono::sys_days(to) - std::chrono::sys_days(from)).count());
}

}  // namespace repwright::base
