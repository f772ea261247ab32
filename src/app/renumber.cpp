#include "app/renumber.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <utility>

#include "base/clock_text.hpp"

namespace repwright::app {
namespace {

constexpr double half_a_metre = 0.5;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}
bool whole(double number) {
  return number == std::floor(number);
}

/// A number as it stands in a text: `12`, `2,0`, `3:30`.
struct Written {
  std::size_t at = 0;
  std::size_t length = 0;
  double value = 0;  // of a clock time: seconds
  bool clock = false;
};

double value_of(std::string_view digits) {
  double value = 0;
  std::string plain(digits);
  for (char& c : plain)
    if (c == ',') c = '.';
  std::from_chars(plain.data(), plain.data() + plain.size(), value);
  return value;
}

/// The numbers of [begin, end), in order. A sign between two digits belongs to the number.
std::vector<Written> numbers_in(std::string_view text, std::size_t begin, std::size_t end) {
  std::vector<Written> numbers;
  for (std::size_t at = begin; at < end; ++at) {
    if (!is_digit(text[at])) continue;
    std::size_t stop = at;
    bool clock = false;
    while (stop < end &&
           (is_digit(text[stop]) || ((text[stop] == '.' || text[stop] == ',' || text[stop] == ':') &&
                                     stop + 1 < end && is_digit(text[stop + 1])))) {
      clock = clock || text[stop] == ':';
      ++stop;
    }
    const std::string_view digits = text.substr(at, stop - at);
    Written number{.at = at, .length = stop - at, .value = value_of(digits), .clock = clock};
    if (clock) {
      const auto time = base::parse_clock(digits);
      number.value = time ? time->si() : -1;
    }
    numbers.push_back(number);
    at = stop;
  }
  return numbers;
}

bool is_letter(char c) {
  return lower(c) >= 'a' && lower(c) <= 'z';
}

/// A long unit of distance behind a number: where its word ends, and how many metres it has.
struct LongUnit {
  std::size_t end = 0;
  double metres = 0;
};
std::optional<LongUnit> long_unit(std::string_view text, std::size_t at) {
  constexpr std::array<std::pair<std::string_view, double>, 5> units{
      {{"km", 1000}, {"k", 1000}, {"miles", 1609.344}, {"mile", 1609.344}, {"mi", 1609.344}}};
  while (at < text.size() && text[at] == ' ') ++at;
  std::size_t end = at;
  std::string word;
  while (end < text.size() && is_letter(text[end])) word += lower(text[end++]);
  for (const auto& [name, metres] : units)
    if (word == name) return LongUnit{.end = end, .metres = metres};
  return std::nullopt;
}

std::string clock_words(double seconds) {
  return base::format_clock(base::Duration::from_si(seconds));
}

/// `E3MOM`, `e3mom`: the word around a whole number of minutes that says how long a turn is.
std::optional<Rewrite> turn_in_letters(std::string_view text, const Written& number, double to) {
  constexpr std::string_view behind = "mom";
  const std::size_t end = number.at + number.length;
  if (number.at == 0 || lower(text[number.at - 1]) != 'e' || end + behind.size() > text.size())
    return std::nullopt;
  for (std::size_t i = 0; i < behind.size(); ++i)
    if (lower(text[end + i]) != behind[i]) return std::nullopt;
  return Rewrite{
      .at = number.at - 1, .length = number.length + 1 + behind.size(), .words = "Every " + clock_words(to)};
}

void time_ways(std::string_view text, const Written& found, const Renumber& number,
               std::vector<Rewrite>& ways) {
  const auto becomes = [&](std::string words) {
    ways.push_back({.at = found.at, .length = found.length, .words = std::move(words)});
  };
  if (found.clock) {
    if (found.value == number.from) becomes(clock_words(number.to));
    return;
  }
  if (found.value * 60 == number.from) {
    if (const auto turn = turn_in_letters(text, found, number.to)) return ways.push_back(*turn);
    becomes(whole(number.to / 60) ? fmt::format("{:.0f}", number.to / 60) : clock_words(number.to));
  }
  if (found.value == number.from) becomes(fmt::format("{:.0f}", number.to));
}

}  // namespace

std::vector<Rewrite> ways_to_renumber(std::string_view text, const Renumber& number) {
  std::vector<Rewrite> ways;
  for (const Written& found : numbers_in(text, number.begin, std::min(number.end, text.size()))) {
    if (number.kind == NumberKind::Time) {
      time_ways(text, found, number, ways);
      continue;
    }
    if (found.clock) continue;
    if (found.value == number.from)
      ways.push_back({.at = found.at, .length = found.length, .words = fmt::format("{:g}", number.to)});
    if (number.kind != NumberKind::Metres) continue;
    const auto unit = long_unit(text, found.at + found.length);
    if (unit && std::abs(found.value * unit->metres - number.from) < half_a_metre)
      ways.push_back(
          {.at = found.at, .length = unit->end - found.at, .words = fmt::format("{:g} m", number.to)});
  }
  return ways;
}

}  // namespace repwright::app
