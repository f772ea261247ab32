#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace repwright::sheets {

enum class Align : unsigned char { Left, Right };

/// A table of plain text: columns as wide as their widest cell, two spaces between, heads underlined by
/// nothing.
struct Table {
  struct Column {
    std::string head;
    Align align = Align::Left;
  };
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
};

/// The table's lines, each indented by `indent` spaces and ended by a line feed, without trailing spaces. A
/// last column that is left-aligned wraps at the page's width.
std::string table_text(const Table& table, int indent);

struct Lines {
  int width = 80;  // columns of every line, unless one word is longer
  int indent = 0;  // columns before every line but the first
};

/// `lead` as it stands, then the text broken at spaces into lines.
std::string wrapped(std::string_view lead, std::string_view text, Lines lines);

}  // namespace repwright::sheets
