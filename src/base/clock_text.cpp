#include "base/clock_text.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "base/require.hpp"
#include "base/text.hpp"

namespace repwright::base {

namespace {

constexpr double longest_s = 1e9;  // so that whole seconds fit an int

/// A field after a colon: two digits below 60.
std::optional<int> sixtieths(std::string_view text) {
  const auto number = text.size() == 2 ? parse_digits(text) : std::nullopt;
  return number && *number < 60 ? number : std::nullopt;
}

/// The seconds that one to three digits after the decimal mark stand for.
std::optional<double> decimals(std::string_view digits) {
  constexpr std::array<double, 4> parts_per_second{1, 10, 100, 1000};
  const auto number = digits.size() < parts_per_second.size() ? parse_digits(digits) : std::nullopt;
  if (!number) return std::nullopt;
  return *number / parts_per_second[digits.size()];
}

/// The time, or nothing if the text is not one. Four digits in front keep it below `longest_s`.
std::optional<Duration> read_clock(std::string_view text) {
  const std::size_t mark = text.find_first_of(".,");
  const auto part = mark == std::string_view::npos ? 0.0 : decimals(text.substr(mark + 1));
  const std::vector<std::string_view> fields = split(text.substr(0, mark), ':');
  if (fields.size() < 2 || fields.size() > 3 || fields[0].size() > 4) return std::nullopt;
  const auto front = parse_digits(fields[0]);
  const auto middle = fields.size() == 3 ? sixtieths(fields[1]) : 0;
  const auto seconds = sixtieths(fields.back());
  if (!part || !front || !middle || !seconds) return std::nullopt;
  const int minutes = fields.size() == 3 ? *front * 60 + *middle : *front;
  return minutes * minute + (*seconds + *part) * second;
}

}  // namespace

std::string format_clock(Duration time) {
  require(std::abs(time.si()) < longest_s, "a clock shows finite times");
  const auto rounded = static_cast<int>(std::floor(time.si() + 0.5));
  const int size = std::abs(rounded);
  const std::string sign = rounded < 0 ? "-" : "";
  const std::string seconds = ":" + padded(size % 60, 2);
  if (size < 3600) return sign + std::to_string(size / 60) + seconds;
  return sign + std::to_string(size / 3600) + ":" + padded(size / 60 % 60, 2) + seconds;
}

Result<Duration> parse_clock(std::string_view text) {
  if (const auto time = read_clock(text)) return *time;
  return failure(ErrorCode::Invalid,
                 "'" + std::string(text) + "' is not a time: write m:ss or h:mm:ss, e.g. 8:05 or 1:02:05");
}

}  // namespace repwright::base
