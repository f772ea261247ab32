#pragma once

#include <span>
#include <string>

namespace repwright::sheets {

/// What one person does instead of one movement of the board.
struct Swap {
  std::string person;
  std::string written;  // the movement on the board
  std::string version;  // what the person does
  std::string reason;   // the person's action words, or why
  bool operator==(const Swap&) const = default;
};

/// Who does what instead of what is written, by reason: with one person, all that this person does; with
/// several, a line for each version. The same swap in several pieces is told once. UTF-8, ends with a line
/// feed; empty without swaps.
std::string swaps_text(std::span<const Swap> swaps);

}  // namespace repwright::sheets
