#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.hpp"

/// Small pieces of English that sentences are made of.
namespace repwright::board {

/// `12`, `22.5`: no more digits than the number has, at most three behind the point.
std::string number_text(double value);

/// `five` up to twelve, then digits.
std::string count_word(int count);

/// `once`, `twice`, `five times`.
std::string times_word(int count);

/// `90 seconds`, `2 minutes`, `2 minutes 30`, `2 hours 5 minutes`.
std::string time_words(base::Duration time);

/// `minute`, `90 seconds`, `3 minutes`: behind `every`.
std::string period_words(base::Duration time);

/// `a`, `a and b`, `a, b and c`; parts that hold a comma themselves are parted by semicolons.
std::string listed(std::span<const std::string> parts, std::string_view last_link = "and");

/// `a, b, c`, the order of doing; semicolons as above.
std::string in_order(std::span<const std::string> parts);

/// What `write` makes of each value.
template <class Values, class Write>
std::vector<std::string> texts_of(const Values& values, Write write) {
  std::vector<std::string> texts;
  texts.reserve(values.size());
  for (const auto& value : values) texts.push_back(write(value));
  return texts;
}

/// The first letter made a capital.
std::string capital(std::string text);

}  // namespace repwright::board
