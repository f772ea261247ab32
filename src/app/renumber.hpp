#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// A coach's number made another in the coach's own words.
namespace repwright::app {

enum class NumberKind : std::uint8_t { Count, Metres, Time };

/// One number of a text that shall be another: somewhere in bytes [begin, end). Times in seconds.
struct Renumber {
  NumberKind kind = NumberKind::Count;
  double from = 0;
  double to = 0;
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// One way of doing it: `length` bytes from `at` become `words`.
struct Rewrite {
  std::size_t at = 0;
  std::size_t length = 0;
  std::string words;
};

/// Every place where the number may be meant, each in the spellings of the trade (`12`, `2,0 km`, `3:00`,
/// `E3MOM`, `8'`), the likeliest first. Which of them is meant only reading can tell.
std::vector<Rewrite> ways_to_renumber(std::string_view text, const Renumber& number);

}  // namespace repwright::app
