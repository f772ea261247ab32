#include <charconv>

#include "board/characters.hpp"
#include "board/token.hpp"

namespace repwright::board {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_ascii_letter(char32_t c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_letter(char32_t c) {
  return is_ascii_letter(c) || (c >= 0xC0 && c <= 0x24F && c != 0xD7 && c != 0xF7) ||
         (c >= 0x370 && c <= 0x1FFF);
}
bool is_blank(char32_t c) {
  return c == ' ' || c == '\t' || c == 0xA0 || c == '\v' || c == '\f' || (c >= 0x2000 && c <= 0x200B) ||
         c == 0x202F || c == 0x3000 || c == 0xFEFF || (c >= 0xFE00 && c <= 0xFE0F);
}
bool is_dash(char32_t c) {
  return c == '-' || (c >= 0x2010 && c <= 0x2015) || c == 0x2212 || c == 0x2043;
}
bool is_prime(char32_t c) {
  return c == '\'' || c == 0x2032 || c == 0x2019 || c == 0x2018 || c == 0xB4 || c == '`' || c == 0x201B;
}
bool is_double_prime(char32_t c) {
  return c == '"' || c == 0x2033 || c == 0x201C || c == 0x201D;
}
bool is_bullet(char32_t c) {
  return c == 0x2022 || c == 0x25CF || c == 0x25AA || c == 0x25E6 || c == 0xB7 || c == 0x2023 ||
         c == 0x25A0 || c == 0x25B8 || c == 0x2219;
}
double fraction_of(char32_t c) {
  if (c == 0xBC) return 0.25;
  if (c == 0xBD) return 0.5;
  return c == 0xBE ? 0.75 : 0;
}

void append_folded(std::string& to, std::string_view bytes, char32_t code) {
  if (code >= 'A' && code <= 'Z') {
    to += static_cast<char>(code - 'A' + 'a');
  } else if (code >= 0xC0 && code <= 0xDE) {
    to += bytes[0];
    to += static_cast<char>(static_cast<unsigned char>(bytes[1]) + 0x20);
  } else {
    to += bytes;
  }
}

class Lexer {
 public:
  explicit Lexer(std::string_view text) { out_.text = text; }

  Lexed run() {
    while (at_ < out_.text.size()) line();
    return std::move(out_);
  }

 private:
  std::string_view text() const { return out_.text; }
  Character here() const { return character_at(text(), at_); }
  char byte(std::size_t ahead = 0) const { return at_ + ahead < text().size() ? text()[at_ + ahead] : '\0'; }
  bool at_line_end() const { return at_ >= text().size() || text()[at_] == '\n' || text()[at_] == '\r'; }

  void step() {
    at_ += here().bytes;
    ++column_;
  }
  void step_to(std::size_t end) {
    while (at_ < end) step();
  }

  void line() {
    column_ = 1;
    spaced_ = true;
    in_group_ = false;
    Line line{.first = out_.tokens.size(), .after_blank = blank_};
    while (!at_line_end()) {
      if (is_blank(here().code)) {
        if (line.first == out_.tokens.size()) line.indent += byte() == '\t' ? 4 : 1;
        spaced_ = true;
        step();
      } else {
        token();
      }
    }
    line.last = out_.tokens.size();
    blank_ = line.last == line.first;
    if (!blank_) {
      line.begin = out_.tokens[line.first].span.begin;
      line.end = out_.tokens.back().span.end;
      out_.lines.push_back(line);
    }
    if (byte() == '\r' && byte(1) == '\n') ++at_;
    if (at_ < text().size()) ++at_;
    ++line_;
  }

  void push(TokenKind kind, std::size_t end, std::string folded, double value = 0) {
    Token token{.kind = kind,
                .span = {.begin = at_, .end = end, .line = line_, .column = column_},
                .text = std::move(folded),
                .value = value,
                .spaced = spaced_};
    out_.tokens.push_back(std::move(token));
    step_to(end);
    spaced_ = false;
  }
  void symbol(char name, std::size_t bytes) { push(TokenKind::Symbol, at_ + bytes, std::string(1, name)); }

  void token() {
    const Character c = here();
    if (is_digit(byte()) || (byte() == '.' && is_digit(byte(1)) && spaced_)) return number();
    if (fraction_of(c.code) > 0) return push(TokenKind::Number, at_ + c.bytes, "", fraction_of(c.code));
    if (is_letter(c.code)) return word();
    if (byte() == '[' && behind_times()) {
      in_group_ = true;
      return symbol('(', 1);
    }
    if (byte() == ']' && in_group_) {
      in_group_ = false;
      return symbol(')', 1);
    }
    if (byte() == '[' && enclosed(']', TokenKind::Bracketed)) return;
    if (byte() == '"' && spaced_ && enclosed('"', TokenKind::Quoted)) return;
    mark(c);
  }

  /// `4 x [400 m run, 20 swings]`: square brackets round what is repeated are round ones.
  bool behind_times() const {
    const Token* last = out_.tokens.empty() ? nullptr : &out_.tokens.back();
    return last != nullptr && last->span.line == line_ && last->kind == TokenKind::Symbol &&
           last->text[0] == times_sign;
  }

  void mark(Character c) {
    if (text().substr(at_, 3) == "...") return symbol(ellipsis_sign, dots());
    if (c.code == 0x2026) return symbol(ellipsis_sign, c.bytes);
    if (text().substr(at_, 2) == "->" || text().substr(at_, 2) == "=>") return symbol(arrow_sign, 2);
    if (text().substr(at_, 2) == "..") return symbol(ellipsis_sign, 2);
    if (c.code == 0x2192 || c.code == 0x21D2 || c.code == 0x27A1 || c.code == 0xBB)
      return symbol(arrow_sign, c.bytes);
    if (is_dash(c.code)) return symbol('-', c.bytes);
    if (c.code == 0xD7 || c.code == 0x2715) return symbol(times_sign, c.bytes);
    if (text().substr(at_, 2) == "''") return symbol('"', 2);
    if (is_prime(c.code)) return symbol('\'', c.bytes);
    if (is_double_prime(c.code)) return symbol('"', c.bytes);
    if (is_bullet(c.code)) return symbol(bullet_sign, c.bytes);
    constexpr std::string_view plain = "/@:%+*(),;<>=#&.|!";
    const bool known = c.bytes == 1 && plain.find(byte()) != std::string_view::npos;
    symbol(known ? byte() : unknown_sign, c.bytes);
  }
  std::size_t dots() const {
    std::size_t count = 0;
    while (byte(count) == '.') ++count;
    return count;
  }

  bool enclosed(char close, TokenKind kind) {
    std::size_t end = at_ + 1;
    while (end < text().size() && text()[end] != close && text()[end] != '\n' && text()[end] != '\r') ++end;
    if (end >= text().size() || text()[end] != close || end == at_ + 1) return false;
    push(kind, end + 1, kept_words(text().substr(at_ + 1, end - at_ - 1)));
    return true;
  }

  /// A decimal point or comma; `1,000` is a thousand, `21,15,9` and `12.10.8` are lists.
  void number() {
    std::size_t end = at_;
    std::string digits;
    auto run = [&] {
      while (end < text().size() && is_digit(text()[end])) digits += text()[end++];
    };
    run();
    const std::size_t whole = end - at_;
    if (end + 1 < text().size() && (text()[end] == '.' || text()[end] == ',') && is_digit(text()[end + 1])) {
      std::size_t after = end + 1;
      while (after < text().size() && is_digit(text()[after])) ++after;
      const bool listed_before = at_ > 0 && text()[at_ - 1] == text()[end] && !spaced_;
      const bool list = listed_before || (after + 1 < text().size() && text()[after] == text()[end] &&
                                          is_digit(text()[after + 1]));
      const bool thousands =
          text()[end] == ',' && after - end == 4 && whole >= 1 && whole <= 3 && text()[at_] != '0';
      if (!list) {
        ++end;
        if (!thousands) digits += '.';
        run();
      }
    }
    double value = 0;
    const std::string padded = digits.starts_with('.') ? "0" + digits : digits;
    std::from_chars(padded.data(), padded.data() + padded.size(), value);
    const Character behind = end < text().size() ? character_at(text(), end) : Character{};
    if (const double part = end < text().size() ? fraction_of(behind.code) : 0; part > 0) {  // `1½`
      value += part;
      end += behind.bytes;
      digits += part == 0.5 ? ".5" : part == 0.25 ? ".25" : ".75";
    }
    push(TokenKind::Number, end, digits, value);
  }

  /// Letters with digits inside (`t2b`, `e3mom`); `x` beside a number is a sign, `amrap12` two marks.
  void word() {
    const bool after_number =
        !spaced_ && !out_.tokens.empty() && out_.tokens.back().kind == TokenKind::Number;
    const bool times = byte() == 'x' || byte() == 'X';
    if (times && (after_number || is_digit(byte(1)) || !is_letter(next_code(1))))
      return symbol(times_sign, 1);
    std::string folded;
    std::size_t end = at_;
    std::size_t letters_end = 0;
    bool digits = false;
    while (end < text().size()) {
      const Character c = character_at(text(), end);
      if (is_letter(c.code)) {
        if (digits) letters_end = std::string::npos;
        append_folded(folded, text().substr(end, c.bytes), c.code);
        end += c.bytes;
        if (letters_end != std::string::npos) letters_end = end;
      } else if (is_digit(text()[end])) {
        digits = true;
        folded += text()[end++];
      } else if (is_prime(c.code) && end + c.bytes < text().size() && !digits &&
                 is_letter(character_at(text(), end + c.bytes).code)) {
        end += c.bytes;
      } else {
        break;
      }
    }
    if (digits && letters_end != std::string::npos && letters_end - at_ > 1) {
      folded.resize(folded.find_first_of("0123456789"));
      end = letters_end;
    }
    push(TokenKind::Word, end, std::move(folded));
  }
  char32_t next_code(std::size_t ahead) const {
    return at_ + ahead < text().size() ? character_at(text(), at_ + ahead).code : U' ';
  }

  Lexed out_;
  std::size_t at_ = 0;
  int line_ = 1;
  int column_ = 1;
  bool spaced_ = true;
  bool blank_ = false;
  bool in_group_ = false;
};

}  // namespace

Lexed lex(std::string_view text) {
  return Lexer(text).run();
}

std::string kept_words(std::string_view words) {
  std::string kept;
  bool gap = false;
  for (std::size_t at = 0; at < words.size();) {
    const Character c = character_at(words, at);
    const std::string_view bytes = words.substr(at, c.bytes);
    at += c.bytes;
    if (is_blank(c.code) || c.code < 0x20) {
      gap = !kept.empty();
      continue;
    }
    if (gap) kept += ' ';
    gap = false;
    if (c.code == no_character || c.code == 0x7F) {
      kept += '?';
    } else if (c.code == '[' || c.code == ']') {
      kept += c.code == '[' ? '(' : ')';
    } else if (c.code == '"') {
      kept += '\'';
    } else {
      kept += bytes;
    }
  }
  return kept;
}

}  // namespace repwright::board
