#include "domain/written_values.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>

#include "base/clock_text.hpp"
#include "base/text.hpp"

namespace repwright::domain {
namespace {

constexpr std::size_t longest_number = 24;  // the longest that `write_number` makes of what a cell can hold

bool all_digits(std::string_view text) {
  return !text.empty() && std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

}  // namespace

std::optional<double> read_number(std::string_view text) {
  const std::string_view digits = text.starts_with('-') ? text.substr(1) : text;
  const std::size_t point = digits.find_first_of(".,");
  const bool has_point = point != std::string_view::npos;
  if (!all_digits(digits.substr(0, point)) || digits.size() > longest_number) return std::nullopt;
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

std::optional<base::Duration> read_clock(std::string_view text) {
  const auto time = base::parse_clock(text);
  return time ? std::optional(to_millisecond(*time)) : std::nullopt;
}

std::string write_clock(base::Duration time) {
  const std::int64_t ms = std::max<std::int64_t>(0, std::llround(time.si() * 1000.0));
  const std::int64_t whole = ms / 1000;
  std::string out = base::format_clock(static_cast<double>(whole) * base::second);
  if (ms % 1000 == 0) return out;
  std::string decimals = base::padded(static_cast<int>(ms % 1000), 3);
  decimals.erase(decimals.find_last_not_of('0') + 1);
  return out + "." + decimals;
}

base::Duration to_millisecond(base::Duration time) {
  return base::Duration::from_si(std::round(time.si() * 1000.0) / 1000.0);
}

base::Length to_millimetre(base::Length length) {
  return base::Length::from_si(std::round(length.si() * 1000.0) / 1000.0);
}

}  // namespace repwright::domain
