#include "sheets/table.hpp"

#include <algorithm>

#include "sheets/columns.hpp"
#include "sheets/page.hpp"

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

std::string table_text(const Table& table, int indent) {
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    std::size_t width = columns_of(table.columns[i].head);
    for (const auto& row : table.rows) width = std::max(width, columns_of(row[i]));
    widths.push_back(width);
  }
  const auto line_of = [&](const auto& cell) {
    std::string line(static_cast<std::size_t>(indent), ' ');
    const std::size_t last = table.columns.size() - 1;
    for (std::size_t i = 0; i < last; ++i) line += padded(cell(i), widths[i], table.columns[i].align) + "  ";
    if (table.columns[last].align == Align::Right)
      line += padded(cell(last), widths[last], Align::Right);
    else
      line = wrapped(line, cell(last), {.width = page_width, .indent = static_cast<int>(columns_of(line))});
    trim_end(line);
    return line + "\n";
  };
  std::string text = line_of([&](std::size_t i) { return table.columns[i].head; });
  for (const auto& row : table.rows) text += line_of([&](std::size_t i) { return row[i]; });
  return text;
}

std::string wrapped(std::string_view lead, std::string_view text, Lines lines) {
  std::string out(lead);
  std::size_t column = columns_of(lead);
  bool first = true;  // of its line: no blank before it
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    const std::string_view word = text.substr(0, space);
    text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
    if (word.empty()) continue;
    const std::size_t length = columns_of(word);
    if (!first && column + 1 + length > static_cast<std::size_t>(lines.width)) {
      out += "\n" + std::string(static_cast<std::size_t>(lines.indent), ' ');
      column = static_cast<std::size_t>(lines.indent);
      first = true;
    }
    if (!first) {
      out += ' ';
      ++column;
    }
    out += word;
    column += length;
    first = false;
  }
  return out;
}

}  // namespace repwright::sheets
