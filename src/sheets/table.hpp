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

/// The table's lines, each indented by `indent` spaces and ended by a line feed, without trailing spaces.
std::string table_text(const Table& table, int indent);

/// The text broken at spaces into lines of at most `width` columns; further lines are indented by `indent`.
std::string wrapped(std::string_view text, int width, int indent);

/// Columns that the text takes in a terminal, one per code point (the names and words we print have no wide
/// ones).
std::size_t columns_of(std::string_view text);

}  // namespace repwright::sheets
