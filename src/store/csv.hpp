#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "store/problems.hpp"

/// Comma-separated values (RFC 4180), as spreadsheets of any country write them.
namespace repwright::store {

struct CsvRow {
  int line = 0;  // where the row begins, from 1
  std::vector<std::string> cells;
};
struct CsvTable {
  std::vector<std::string> header;
  std::vector<CsvRow> rows;  // each as wide as the header
};

/// UTF-8 with or without byte order mark; `,`, `;` or tab, whichever the header has most of; any line ends;
/// blank lines skipped, short rows filled with empty cells, blanks around cells dropped, hard ones too. Notes
/// what cannot be read: a quote that never ends, text after a quote, more cells than columns, bytes that are
/// not UTF-8.
std::optional<CsvTable> read_csv(std::string_view bytes, const std::string& file, Problems& problems);

/// With commas, quotes where needed and a line feed after each row.
std::string write_csv(const std::vector<std::vector<std::string>>& rows);

}  // namespace repwright::store
