#include "sheets/table.hpp"

#include <algorithm>

namespace repwright::sheets {
namespace {

std::string padded(const std::string& cell, std::size_t width, Align align) {
  const std::string space(width - std::min(width, columns_of(cell)), ' ');
  return align == Align::Left ? cell + space : space + cell;
}

void trim_end(std::string& line) {
  while (!line.empty() && line.back() == ' ') line.pop_back();
}

}  // namespace

std::size_t columns_of(std::string_view text) {
  return static_cast<std::size_t>(
      std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string table_text(const Table& table, int indent) {
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    std::size_t width = columns_of(table.columns[i].head);
    for (const auto& row : table.rows) width = std::max(width, columns_of(row[i]));
    widths.push_back(width);
  }
  const auto line_of = [&](const auto& cell) {
    std::string line(static_cast<std::size_t>(indent), ' ');
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      if (i > 0) line += "  ";
      line += padded(cell(i), widths[i], table.columns[i].align);
    }
    trim_end(line);
    return line + "\n";
  };
  std::string text = line_of([&](std::size_t i) { return table.columns[i].head; });
  for (const auto& row : table.rows) text += line_of([&](std::size_t i) { return row[i]; });
  return text;
}

std::string wrapped(std::string_view text, int width, int indent) {
  std::string out;
  std::size_t column = 0;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    const std::string_view word = text.substr(0, space);
    text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
    if (word.empty()) continue;
    const std::size_t length = columns_of(word);
    if (column > 0 && column + 1 + length > static_cast<std::size_t>(width)) {
      out += "\n" + std::string(static_cast<std::size_t>(indent), ' ');
      column = static_cast<std::size_t>(indent);
    } else if (column > 0) {
      out += ' ';
      ++column;
    }
    out += word;
    column += length;
  }
  return out;
}

}  // namespace repwright::sheets
