#include "app/renumber.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <optional>

#include "base/clock_text.hpp"

namespace repwright::app {
namespace {

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

/// Where the word behind a number ends if it is one of kilometres; nothing otherwise.
std::optional<std::size_t> end_of_kilometres(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  if (at >= text.size() || lower(text[at]) != 'k') return std::nullopt;
  const bool metres = at + 1 < text.size() && lower(text[at + 1]) == 'm';
  const std::size_t end = at + (metres ? 2 : 1);
  const bool word_goes_on = end < text.size() && lower(text[end]) >= 'a' && lower(text[end]) <= 'z';
  return word_goes_on ? std::nullopt : std::optional(end);
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
    if (number.kind != NumberKind::Metres || found.value * 1000 != number.from) continue;
    if (const auto end = end_of_kilometres(text, found.at + found.length))
      ways.push_back({.at = found.at, .length = *end - found.at, .words = fmt::format("{:g} m", number.to)});
  }
  return ways;
}

}  // namespace repwright::app
