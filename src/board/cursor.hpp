#pragma once

#include <initializer_list>
#include <optional>
#include <string_view>

#include "board/token.hpp"

namespace repwright::board {

/// A place in the marks [at, end) of a line. Copy it to look ahead; every `take` moves on only when it finds
/// what it looks for.
class Cursor {
 public:
  Cursor(const Lexed& source, std::size_t at, std::size_t end) : source_(&source), at_(at), end_(end) {}

  bool done() const { return at_ >= end_; }
  std::size_t position() const { return at_; }
  std::size_t end() const { return end_; }
  void next(std::size_t count = 1) { at_ = at_ + count < end_ ? at_ + count : end_; }

  /// The mark so far ahead; behind the end an empty symbol.
  const Token& peek(std::size_t ahead = 0) const;
  /// The mark before this one, wherever it stands on the line; at the very start an empty symbol.
  const Token& before() const;
  bool at_number(std::size_t ahead = 0) const { return peek(ahead).kind == TokenKind::Number; }
  bool at_word(std::size_t ahead = 0) const { return peek(ahead).kind == TokenKind::Word; }
  bool at_symbol(char name, std::size_t ahead = 0) const;
  bool glued(std::size_t ahead) const { return at_ + ahead < end_ && !peek(ahead).spaced; }

  /// How many marks the phrase takes here (words; hyphens between them do not matter), or 0.
  std::size_t reach(std::string_view phrase, std::size_t ahead = 0) const;
  bool at(std::string_view phrase) const { return reach(phrase) > 0; }
  bool at_any(std::initializer_list<std::string_view> phrases, std::size_t ahead = 0) const;
  bool take(std::string_view phrase);
  bool take_any(std::initializer_list<std::string_view> phrases);
  bool take_symbol(char name);
  std::optional<double> take_number();
  /// The number that stands here, passed over; 0 where none does. For who has looked already.
  double number();
  std::optional<int> take_count();

  /// The stretch from mark `from` up to the last mark taken.
  domain::Span span_from(std::size_t from) const { return span_of(from, at_); }
  domain::Span span_of(std::size_t from, std::size_t to) const;
  domain::Span rest_span() const { return span_of(at_, end_); }
  std::string_view text_of(const domain::Span& span) const {
    return source_->text.substr(span.begin, span.end - span.begin);
  }
  Cursor part(std::size_t from, std::size_t to) const { return {*source_, from, to}; }
  /// The mark that closes the bracket opened here, or the end.
  std::size_t closing() const;

 private:
  const Lexed* source_;
  std::size_t at_;
  std::size_t end_;
};

}  // namespace repwright::board
