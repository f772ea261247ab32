#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "domain/diagnostic.hpp"

namespace repwright::board {

enum class TokenKind : std::uint8_t { Number, Word, Symbol, Quoted, Bracketed };

/// Names of symbols that have no character of their own.
inline constexpr char times_sign = 'x';     // x × between numbers
inline constexpr char arrow_sign = 'A';     // -> → => »
inline constexpr char ellipsis_sign = 'E';  // ... …
inline constexpr char bullet_sign = 'B';    // • ▪ and other dots
inline constexpr char unknown_sign = '?';   // any other sign

/// One mark of the board. `text` is the folded word (small letters, no apostrophe), the digits of a number,
/// the words inside quotes or square brackets, or the name of a symbol.
struct Token {
  TokenKind kind = TokenKind::Symbol;
  domain::Span span;
  std::string text;
  double value = 0;
  bool spaced = true;  // a blank or the start of the line stands before it
};

/// Tokens [first, last) of one line with something on it.
struct Line {
  std::size_t first = 0;
  std::size_t last = 0;
  std::size_t begin = 0;  // bytes, without the blanks around
  std::size_t end = 0;
  int indent = 0;
  bool after_blank = false;
};

struct Lexed {
  std::string_view text;
  std::vector<Token> tokens;
  std::vector<Line> lines;
};

/// Every mark of the text; any bytes give tokens, unreadable ones give `unknown_sign`.
Lexed lex(std::string_view text);

/// The coach's words as they are kept: blanks collapsed, quotes and square brackets made plain, unreadable
/// bytes as `?`, so that they can be written and read again.
std::string kept_words(std::string_view words);

}  // namespace repwright::board
