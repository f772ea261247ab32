#include "sheets/diagnostics_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "base/utf8.hpp"
#include "sheets/columns.hpp"

namespace repwright::sheets {
namespace {

using domain::Diagnostic;
using domain::Severity;

std::string_view severity_word(Severity severity) {
  switch (severity) {
    case Severity::Note:
      return "note";
    case Severity::Warning:
      return "warning";
    case Severity::Error:
      return "error";
  }
  return "";
}

constexpr char32_t replacement = 0xFFFD;
char32_t shown(char32_t c) {
  return c < 0x20 || c == 0x7F ? replacement : c;
}

void append(std::string& text, char32_t c) {
  const auto byte = [](char32_t value) { return static_cast<char>(static_cast<std::uint8_t>(value)); };
  if (c < 0x80) {
    text += byte(c);
  } else if (c < 0x800) {
    text += {byte(0xC0 | (c >> 6)), byte(0x80 | (c & 0x3F))};
  } else if (c < 0x10000) {
    text += {byte(0xE0 | (c >> 12)), byte(0x80 | ((c >> 6) & 0x3F)), byte(0x80 | (c & 0x3F))};
  } else {
    text += {byte(0xF0 | (c >> 18)), byte(0x80 | ((c >> 12) & 0x3F)), byte(0x80 | ((c >> 6) & 0x3F)),
             byte(0x80 | (c & 0x3F))};
  }
}

/// The source line of a span with tabs as blanks, and the line of marks below it.
struct Excerpt {
  std::string line, marks;
};

constexpr std::size_t tab_stop = 4;

Excerpt excerpt_of(std::string_view text, const domain::Span& span) {
  const std::size_t at = std::min(span.begin, text.size());
  const std::size_t before = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
  const std::size_t begin = before == std::string_view::npos ? 0 : before + 1;
  std::size_t end = std::min(text.find('\n', begin), text.size());
  if (end > begin && text[end - 1] == '\r') --end;
  Excerpt excerpt;
  std::size_t column = 0, first = 0, last = 0;
  std::size_t offset = begin;
  while (offset < end) {
    std::size_t next = offset + 1;
    while (next < end && (static_cast<unsigned char>(text[next]) & 0xC0U) == 0x80U) ++next;
    if (offset <= at) first = column;
    if (text[offset] == '\t') {
      const std::size_t blanks = tab_stop - column % tab_stop;
      excerpt.line.append(blanks, ' ');
      column += blanks;
    } else {
      for (const char32_t c : base::code_points(base::repair_utf8(text.substr(offset, next - offset)))) {
        append(excerpt.line, shown(c));
        column += columns_of(shown(c));
      }
    }
    if (offset < span.end) last = column;
    offset = next;
  }
  if (at >= end) first = column;
  excerpt.marks = std::string(first, ' ') + '^';
  if (last > first + 1) excerpt.marks.append(last - first - 1, '~');
  return excerpt;
}

std::string one_text(const SourceText& source, const Diagnostic& diagnostic) {
  const Excerpt excerpt = excerpt_of(source.text, diagnostic.span);
  const std::string number = fmt::format("{:>4}", diagnostic.span.line);
  const std::string margin(number.size(), ' ');
  std::string text =
      fmt::format("{}:{}:{}: {}: {} [{}]\n", source.name, diagnostic.span.line, diagnostic.span.column,
                  severity_word(diagnostic.severity), diagnostic.text, diagnostic.name);
  text += fmt::format("{} | {}\n{} | {}\n", number, excerpt.line, margin, excerpt.marks);
  if (!diagnostic.hint.empty()) text += fmt::format("{} = hint: {}\n", margin, diagnostic.hint);
  return text;
}

}  // namespace

std::string diagnostics_text(const SourceText& source, std::span<const Diagnostic> diagnostics) {
  std::string text;
  for (const Diagnostic& diagnostic : diagnostics) text += one_text(source, diagnostic);
  return text;
}

}  // namespace repwright::sheets
