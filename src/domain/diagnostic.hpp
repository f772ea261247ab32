#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace repwright::domain {

enum class Severity : std::uint8_t { Note, Warning, Error };

/// A stretch of the board text: bytes [begin, end) of the whole text; `line` and `column` count from 1, the
/// column in characters, and name where the stretch begins.
struct Span {
  std::size_t begin = 0;
  std::size_t end = 0;
  int line = 1;
  int column = 1;
  bool operator==(const Span&) const = default;
};

/// One remark on a text: what was seen, the rule, a hint. `name` is the stable id ("unknown-movement").
/// `repairs` are whole replacements of the span's text, the likeliest first.
struct Diagnostic {
  std::string name;
  Severity severity = Severity::Warning;
  std::string text;
  std::string hint;
  Span span;
  std::vector<std::string> repairs;
  bool operator==(const Diagnostic&) const = default;
};

}  // namespace repwright::domain
