#include "store/csv.hpp"
#include "base/text.hpp"
#include "base/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace repwright::store {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

constexpr std::string_view hard_space = "\u00A0";

/// The cell without blanks around it, hard ones (which spreadsheets bring along) included.
std::string_view cell_text(std::string_view text) {
  for (std::string_view before; before.size() != text.size();) {
    before = text = base::trim(text);
    if (text.starts_with(hard_space)) text.remove_prefix(hard_space.size());
    if (text.ends_with(hard_space)) text.remove_suffix(hard_space.size());
  }
  return text;
}

/// The first line with bytes that are not UTF-8, from 1; nothing if all are.
std::optional<int> first_line_not_utf8(std::string_view bytes) {
  if (base::is_valid_utf8(bytes)) return std::nullopt;
  int line = 0;
  for (const std::string_view text : base::split(bytes, '\n')) {
    ++line;
    if (!base::is_valid_utf8(text)) break;
  }
  return line;
}

char separator_of(std::string_view text) {
  std::size_t commas = 0;
  std::size_t semicolons = 0;
  std::size_t tabs = 0;
  bool quoted = false;
  for (const char c : text) {
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == '\n' || c == '\r') break;
    commas += c == ',' ? 1U : 0U;
    semicolons += c == ';' ? 1U : 0U;
    tabs += c == '\t' ? 1U : 0U;
  }
  if (tabs > commas && tabs > semicolons) return '\t';
  // A tie is a header with a decimal comma in each column ("run 0,8 km").
  return semicolons > 0 && semicolons >= commas ? ';' : ',';
}

/// Takes the text apart, cell by cell.
class CsvReader {
 public:
  CsvReader(std::string_view text, const std::string& file, Problems& problems)
      : text_(text), separator_(separator_of(text)), file_(file), problems_(problems) {}

  std::vector<CsvRow> rows() {
    std::vector<CsvRow> out;
    while (at_ < text_.size()) {
      CsvRow row = next_row();
      if (std::ranges::any_of(row.cells, [](const std::string& cell) { return !cell.empty(); }))
        out.push_back(std::move(row));
    }
    return out;
  }

 private:
  CsvRow next_row() {
    CsvRow row{line_, {}};
    while (true) {
      row.cells.push_back(next_cell());
      if (at_ >= text_.size()) return row;
      const char c = text_[at_++];
      if (c == separator_) continue;
      if (c == '\r' && at_ < text_.size() && text_[at_] == '\n') ++at_;
      ++line_;
      return row;
    }
  }

  bool at_end_of_cell() const {
    return at_ >= text_.size() || text_[at_] == separator_ || text_[at_] == '\n' || text_[at_] == '\r';
  }

  std::string next_cell() {
    while (!at_end_of_cell() && (text_[at_] == ' ' || text_[at_] == '\t')) ++at_;
    if (at_ < text_.size() && text_[at_] == '"') return quoted_cell();
    const std::size_t begin = at_;
    while (!at_end_of_cell()) ++at_;
    return std::string(cell_text(text_.substr(begin, at_ - begin)));
  }

  std::string quoted_cell() {
    const int begins = line_;
    std::string cell;
    for (++at_; at_ < text_.size(); ++at_) {
      const char c = text_[at_];
      if (c == '\n') ++line_;
      if (c == '"') {
        if (at_ + 1 >= text_.size() || text_[at_ + 1] != '"') break;
        ++at_;
      }
      cell += c;
    }
    if (at_ >= text_.size()) {
      problems_.add({file_, begins, "", "", "a quote begins here and never ends"});
      return cell;
    }
    const std::size_t after = ++at_;
    while (!at_end_of_cell()) ++at_;
    if (!base::trim(text_.substr(after, at_ - after)).empty())
      problems_.add({file_, line_, "", "", "text stands after the closing quote of a cell"});
    return std::string(cell_text(cell));
  }

  std::string_view text_;
  char separator_;
  const std::string& file_;
  Problems& problems_;
  std::size_t at_ = 0;
  int line_ = 1;
};

std::string quoted_if_needed(const std::string& cell) {
  if (cell.find_first_of(",;\t\"\r\n") == std::string::npos) return cell;
  std::string out = "\"";
  for (const char c : cell) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

}  // namespace

std::optional<CsvTable> read_csv(std::string_view bytes, const std::string& file, Problems& problems) {
  if (bytes.starts_with(byte_order_mark)) bytes.remove_prefix(byte_order_mark.size());
  if (const auto line = first_line_not_utf8(bytes)) {
    problems.add({file, *line, "", "", "is not UTF-8, expected the file saved as 'CSV UTF-8'"});
    return std::nullopt;
  }
  std::vector<CsvRow> rows = CsvReader(bytes, file, problems).rows();
  if (rows.empty()) {
    problems.add({file, 0, "", "", "is empty, expected a header row"});
    return std::nullopt;
  }
  CsvTable table;
  table.header = std::move(rows.front().cells);
  while (!table.header.empty() && table.header.back().empty()) table.header.pop_back();
  rows.erase(rows.begin());
  for (CsvRow& row : rows) {
    while (row.cells.size() > table.header.size() && row.cells.back().empty()) row.cells.pop_back();
    if (row.cells.size() > table.header.size())
      problems.add({file, row.line, "", "",
                    fmt::format("has {} cells, expected at most the {} of the header", row.cells.size(),
                                table.header.size())});
    row.cells.resize(table.header.size());
  }
  table.rows = std::move(rows);
  return table;
}

std::string write_csv(const std::vector<std::vector<std::string>>& rows) {
  std::string out;
  for (const std::vector<std::string>& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i > 0) out += ',';
      out += quoted_if_needed(row[i]);
    }
    out += '\n';
  }
  return out;
}

}  // namespace repwright::store
