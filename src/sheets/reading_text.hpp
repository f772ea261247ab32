#pragma once

#include <optional>
#include <span>
#include <string>

#include "base/quantity.hpp"

namespace repwright::sheets {

struct ReadingWords {
  std::string title;
  std::span<const std::string> sentences;  // one for each part, in order
  std::optional<base::Duration> fixed_length;
};

/// The board said back: title, numbered sentences, the length when every part is fixed. Lines of at most 100
/// columns; ends with a line feed.
std::string reading_text(const ReadingWords& words);

}  // namespace repwright::sheets
