#include "base/text.hpp"

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <utility>

#include "base/require.hpp"
#include "base/utf8.hpp"

namespace repwright::base {

namespace {

constexpr std::size_t most_digits = 9;  // every number of nine digits is an int

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

}  // namespace

std::string_view trim(std::string_view text) {
  constexpr std::string_view blanks = " \t\r\n\f\v";
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return text.substr(0, 0);
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

std::vector<std::string_view> split(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  std::size_t begin = 0;
  for (std::size_t end = text.find(separator); end != std::string_view::npos;
       end = text.find(separator, begin)) {
    parts.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  parts.push_back(text.substr(begin));
  return parts;
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

std::optional<int> parse_digits(std::string_view text) {
  if (text.empty() || text.size() > most_digits || !std::ranges::all_of(text, is_digit)) return std::nullopt;
  int number = 0;
  std::from_chars(text.data(), text.data() + text.size(), number);
  return number;
}

std::string padded(int number, int width) {
  require(number >= 0, "only numbers from 0 are padded");
  std::string digits = std::to_string(number);
  const auto wanted = static_cast<std::size_t>(width);
  if (digits.size() < wanted) digits.insert(0, wanted - digits.size(), '0');
  return digits;
}

int edit_distance(std::string_view from, std::string_view to, int limit) {
  const std::u32string a = code_points(from);
  const std::u32string b = code_points(to);
  const int apart = static_cast<int>(std::max(a.size(), b.size()) - std::min(a.size(), b.size()));
  if (apart > limit) return limit + 1;

  // Row i holds the distances of the first i characters of `a` to every beginning of `b`.
  std::vector<int> two_up(b.size() + 1);
  std::vector<int> up(b.size() + 1);
  std::vector<int> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::swap(two_up, up);
    std::swap(up, row);
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int replaced = up[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({up[j] + 1, row[j - 1] + 1, replaced});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], two_up[j - 2] + 1);
    }
    // A swap reaches back two rows, but what two rows up is below the limit is within it one row up too.
    if (std::ranges::min(row) > limit) return limit + 1;
  }
  return std::min(row[b.size()], limit + 1);
}

}  // namespace repwright::base
