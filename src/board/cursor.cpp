#include "board/cursor.hpp"

#include <algorithm>

namespace repwright::board {
namespace {

const Token no_token{};

}  // namespace

const Token& Cursor::peek(std::size_t ahead) const {
  return at_ + ahead < end_ ? source_->tokens[at_ + ahead] : no_token;
}

const Token& Cursor::before() const {
  if (at_ == 0 || at_ > source_->tokens.size()) return no_token;
  const Token& last = source_->tokens[at_ - 1];
  const bool same_line = at_ < source_->tokens.size() && source_->tokens[at_].span.line == last.span.line;
  return same_line ? last : no_token;
}

bool Cursor::at_symbol(char name, std::size_t ahead) const {
  const Token& token = peek(ahead);
  return token.kind == TokenKind::Symbol && token.text.size() == 1 && token.text[0] == name;
}

std::size_t Cursor::reach(std::string_view phrase, std::size_t ahead) const {
  std::size_t taken = ahead;
  while (!phrase.empty()) {
    const std::size_t blank = phrase.find(' ');
    const std::string_view word = phrase.substr(0, blank);
    if (taken > ahead && at_symbol('-', taken)) ++taken;
    const Token& token = peek(taken);
    if (token.kind == TokenKind::Symbol || token.text != word) return 0;
    ++taken;
    phrase = blank == std::string_view::npos ? std::string_view{} : phrase.substr(blank + 1);
  }
  return taken - ahead;
}

bool Cursor::at_any(std::initializer_list<std::string_view> phrases, std::size_t ahead) const {
  return std::ranges::any_of(phrases, [&](std::string_view phrase) { return reach(phrase, ahead) > 0; });
}

bool Cursor::take(std::string_view phrase) {
  const std::size_t marks = reach(phrase);
  next(marks);
  return marks > 0;
}

bool Cursor::take_any(std::initializer_list<std::string_view> phrases) {
  std::size_t longest = 0;
  for (const std::string_view phrase : phrases) longest = std::max(longest, reach(phrase));
  next(longest);
  return longest > 0;
}

bool Cursor::take_symbol(char name) {
  if (!at_symbol(name)) return false;
  next();
  return true;
}

std::optional<double> Cursor::take_number() {
  if (!at_number()) return std::nullopt;
  const double value = peek().value;
  next();
  return value;
}

double Cursor::number() {
  return take_number().value_or(0);
}

std::optional<int> Cursor::take_count() {
  if (!at_number() || peek().value > 1e6 || peek().value != static_cast<int>(peek().value))
    return std::nullopt;
  const int count = static_cast<int>(peek().value);
  next();
  return count;
}

domain::Span Cursor::span_of(std::size_t from, std::size_t to) const {
  if (source_->tokens.empty()) return {};
  const std::size_t last = source_->tokens.size() - 1;
  domain::Span span = source_->tokens[std::min(from, last)].span;
  if (to > from) span.end = source_->tokens[std::min(to - 1, last)].span.end;
  return span;
}

std::size_t Cursor::closing() const {
  int depth = 0;
  for (std::size_t at = at_; at < end_; ++at) {
    const Token& token = source_->tokens[at];
    if (token.kind != TokenKind::Symbol) continue;
    if (token.text == "(") ++depth;
    if (token.text == ")" && --depth <= 0) return at;
  }
  return end_;
}

}  // namespace repwright::board
