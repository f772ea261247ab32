#include "domain/written_values.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>

namespace repwright::domain {
namespace {

constexpr std::string_view hard_space = "\u00A0";

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_blank(char c) {
  return c == ' ' || (c >= '\t' && c <= '\r');
}
bool all_digits(std::string_view text) {
  return !text.empty() && std::ranges::all_of(text, is_digit);
}

std::string padded(int value, std::size_t width) {
  const std::string out = std::to_string(value);
  return out.size() < width ? std::string(width - out.size(), '0') + out : out;
}

/// Seconds of a clock as milliseconds: "07", "7.25" (below 60, at most three decimals).
std::optional<int> milliseconds(std::string_view text) {
  const std::size_t point = text.find_first_of(".,");
  const std::string_view whole = text.substr(0, point);
  if (whole.size() != 2 || !all_digits(whole)) return std::nullopt;
  int ms = read_count(whole).value_or(0) * 1000;
  if (ms >= 60000) return std::nullopt;
  if (point == std::string_view::npos) return ms;
  const std::string_view decimals = text.substr(point + 1);
  if (decimals.size() > 3 || !all_digits(decimals)) return std::nullopt;
  int part = read_count(decimals).value_or(0);
  for (std::size_t i = decimals.size(); i < 3; ++i) part *= 10;
  return ms + part;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  for (bool again = true; again;) {
    again = false;
    if (!text.empty() && is_blank(text.front())) text.remove_prefix(1), again = true;
    if (!text.empty() && is_blank(text.back())) text.remove_suffix(1), again = true;
    if (text.starts_with(hard_space)) text.remove_prefix(hard_space.size()), again = true;
    if (text.ends_with(hard_space)) text.remove_suffix(hard_space.size()), again = true;
  }
  return text;
}

std::string lowered(std::string_view text) {
  std::string out(text);
  std::ranges::transform(out, out.begin(),
                         [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return out;
}

std::optional<double> read_number(std::string_view text) {
  const std::string_view digits = text.starts_with('-') ? text.substr(1) : text;
  const std::size_t point = digits.find_first_of(".,");
  const std::string_view whole = digits.substr(0, point);
  const bool has_point = point != std::string_view::npos;
  if (!all_digits(whole) || digits.size() > 24) return std::nullopt;
  if (has_point && !all_digits(digits.substr(point + 1))) return std::nullopt;
  std::string plain(text);
  std::ranges::replace(plain, ',', '.');
  double value = 0;
  const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
  if (error != std::errc() || end != plain.data() + plain.size()) return std::nullopt;
  return value;
}

std::string write_number(double value) {
  std::array<char, 400> buffer{};
  const auto [end, error] =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed);
  return error == std::errc() ? std::string(buffer.data(), end) : std::string("0");
}

base::Duration to_millisecond(base::Duration time) {
  return base::Duration::from_si(std::round(time.si() * 1000.0) / 1000.0);
}

base::Length to_millimetre(base::Length length) {
  return base::Length::from_si(std::round(length.si() * 1000.0) / 1000.0);
}

std::optional<int> read_count(std::string_view text) {
  if (!all_digits(text) || text.size() > 9) return std::nullopt;
  int value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

std::optional<base::Duration> read_clock(std::string_view text) {
  const std::size_t last = text.rfind(':');
  if (last == std::string_view::npos) return std::nullopt;
  const auto seconds = milliseconds(text.substr(last + 1));
  std::string_view before = text.substr(0, last);
  std::int64_t minutes = 0;
  if (const std::size_t first = before.find(':'); first != std::string_view::npos) {
    const auto hours = read_count(before.substr(0, first));
    before.remove_prefix(first + 1);
    if (!hours || *hours > 999 || before.size() != 2) return std::nullopt;
    if (const auto rest = read_count(before); rest && *rest >= 60) return std::nullopt;
    minutes = std::int64_t{*hours} * 60;
  }
  const auto rest = read_count(before);
  if (!seconds || !rest || *rest > 99999) return std::nullopt;
  const std::int64_t ms = (minutes + *rest) * 60000 + *seconds;
  return base::Duration::from_si(static_cast<double>(ms) / 1000.0);
}

std::string write_clock(base::Duration time) {
  const std::int64_t all = std::max<std::int64_t>(0, std::llround(time.si() * 1000.0));
  const auto ms = static_cast<int>(all % 1000);
  const auto seconds = static_cast<int>(all / 1000 % 60);
  const std::int64_t minutes = all / 60000;
  std::string out = minutes < 60
                        ? std::to_string(minutes)
                        : std::to_string(minutes / 60) + ":" + padded(static_cast<int>(minutes % 60), 2);
  out += ":" + padded(seconds, 2);
  if (ms == 0) return out;
  std::string decimals = padded(ms, 3);
  decimals.erase(decimals.find_last_not_of('0') + 1);
  return out + "." + decimals;
}

std::optional<std::chrono::year_month_day> read_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = read_count(text.substr(0, 4));
  const auto month = read_count(text.substr(5, 2));
  const auto day = read_count(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year(*year),
                                         std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day))};
  return date.ok() ? std::optional(date) : std::nullopt;
}

std::string write_date(std::chrono::year_month_day day) {
  return padded(static_cast<int>(day.year()), 4) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(day.month())), 2) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(day.day())), 2);
}

std::optional<int> read_time_of_day(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos || text.size() - colon != 3) return std::nullopt;
  const auto hour = read_count(text.substr(0, colon));
  const auto minute = read_count(text.substr(colon + 1));
  if (!hour || !minute || colon > 2 || *hour > 23 || *minute > 59) return std::nullopt;
  return *hour * 60 + *minute;
}

std::string write_time_of_day(int minute) {
  return padded(minute / 60, 2) + ":" + padded(minute % 60, 2);
}

}  // namespace repwright::domain
