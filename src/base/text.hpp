#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace repwright::base {

/// The text without blanks, tabs and line ends around it: a view into the same text.
std::string_view trim(std::string_view text);

/// The parts between separators, empty parts included: n separators give n + 1 views into the same text.
std::vector<std::string_view> split(std::string_view text, char separator);

/// ASCII capitals made small; every other byte unchanged.
std::string lower(std::string_view text);

/// The number that 1 to 9 ASCII digits stand for; nothing for anything else, signs and blanks included.
std::optional<int> parse_digits(std::string_view text);

/// A number >= 0 in decimal, filled up with zeros on the left to `width` digits.
std::string padded(int number, int width);

/// How many characters must be inserted, dropped, replaced or swapped with their neighbour to turn one text
/// into the other, no stretch touched twice (optimal string alignment; F. J. Damerau, Communications of the
/// ACM 7 (1964) 171-176, doi 10.1145/363958.363994). `limit` + 1 stands for anything above `limit`.
int edit_distance(std::string_view from, std::string_view to, int limit);

}  // namespace repwright::base
