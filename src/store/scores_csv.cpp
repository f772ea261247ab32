#include "store/scores_csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/civil_date.hpp"
#include "base/text.hpp"
#include "domain/movement_names.hpp"
#include "domain/written_values.hpp"
#include "store/csv.hpp"

namespace repwright::store {
namespace {

using domain::DayFlag;
using domain::ScoreEntry;

constexpr std::array<std::string_view, 11> columns{
    "date", "class", "board", "piece", "person", "score", "version", "effort", "flag", "entered_by", "key"};
constexpr std::array<std::string_view, 3> needed{"date", "person", "score"};
constexpr std::array<std::string_view, 4> flags{"", "ill", "hot", "easy"};  // in the order of DayFlag

/// The columns of one file by name.
class ScoreColumns {
 public:
  ScoreColumns(const std::vector<std::string>& headers, ScoresFile& out, Problems& problems,
               const std::string& file) {
    for (std::size_t i = 0; i < headers.size(); ++i) {
      const std::string header = base::lower(headers[i]);
      const auto known = std::ranges::find(columns, std::string_view(header));
      if (known == columns.end()) {
        if (!header.empty()) out.notes.push_back(left_out(headers[i]));
        continue;
      }
      std::optional<std::size_t>& at = at_[static_cast<std::size_t>(known - columns.begin())];
      if (at) problems.add({file, 1, "", header, "stands twice"});
      at = i;
    }
    for (const std::string_view name : needed)
      if (!place(name))
        problems.add({file, 1, "", std::string(name), "is missing: there must be a column of that name"});
  }

  /// The cell under that name; empty if there is no such column.
  const std::string& cell(const CsvRow& row, std::string_view name) const {
    static const std::string none;
    const auto at = place(name);
    return at ? row.cells[*at] : none;
  }

 private:
  std::optional<std::size_t> place(std::string_view name) const {
    return at_[static_cast<std::size_t>(std::ranges::find(columns, name) - columns.begin())];
  }
  static std::string left_out(const std::string& header) {
    const std::string_view meant = domain::nearest_name(base::lower(header), columns);
    return fmt::format("column '{}' is left out: not a known column{}", header,
                       meant.empty() ? std::string() : fmt::format(" (nearest: {})", meant));
  }

  std::array<std::optional<std::size_t>, columns.size()> at_;
};

/// One row becoming an entry.
class EntryReader {
 public:
  EntryReader(const ScoreColumns& known, const CsvRow& row, const std::string& file, Problems& problems)
      : known_(known), row_(row), file_(file), problems_(problems) {}

  ScoreEntry read() {
    ScoreEntry entry;
    if (const auto date = base::parse_date(cell("date")))
      entry.date = *date;
    else
      wrong("date", "a day such as 2027-05-15");
    entry.class_id = cell("class");
    entry.board_id = cell("board");
    entry.piece = cell("piece");
    entry.person = {cell("person")};
    if (entry.person.empty()) wrong("person", "the id of a person");
    entry.text = cell("score");
    if (entry.text.empty()) wrong("score", "what was scored");
    entry.value = domain::read_score(entry.text);
    entry.version = cell("version");
    read_effort(entry);
    read_flag(entry);
    entry.entered_by = cell("entered_by");
    entry.key = cell("key");
    return entry;
  }

 private:
  const std::string& cell(std::string_view name) const { return known_.cell(row_, name); }
  void wrong(std::string_view column, std::string_view expected) {
    problems_.add({file_, row_.line, cell("person"), std::string(column),
                   fmt::format("is '{}', expected {}", cell(column), expected)});
  }
  void read_effort(ScoreEntry& entry) {
    if (cell("effort").empty()) return;
    entry.effort = domain::read_number(cell("effort"));
    if (!entry.effort || *entry.effort < 0 || *entry.effort > 10) wrong("effort", "0 to 10");
  }
  void read_flag(ScoreEntry& entry) {
    const std::string flag = base::lower(cell("flag"));
    const auto known = flag_of(flag);
    if (!known) return wrong("flag", "ill, hot, easy or nothing");
    entry.flag = *known;
  }

  const ScoreColumns& known_;
  const CsvRow& row_;
  const std::string& file_;
  Problems& problems_;
};

}  // namespace

base::Result<ScoresFile> read_scores(std::string_view bytes, const std::string& file) {
  Problems problems;
  ScoresFile out;
  if (const auto table = read_csv(bytes, file, problems)) {
    const ScoreColumns known(table->header, out, problems, file);
    for (const CsvRow& row : table->rows) {
      out.entries.push_back(EntryReader(known, row, file, problems).read());
      const ScoreEntry& entry = out.entries.back();
      if (std::holds_alternative<std::monostate>(entry.value) && !entry.text.empty())
        out.notes.push_back(fmt::format("{}:{}: score '{}' is kept as words and teaches nothing", file,
                                        row.line, entry.text));
    }
  }
  if (!problems.empty()) return tl::unexpected(problems.error());
  return out;
}

std::string write_scores(const std::vector<ScoreEntry>& entries) {
  std::vector<std::vector<std::string>> rows{{columns.begin(), columns.end()}};
  for (const ScoreEntry& entry : entries)
    rows.push_back({base::format_date(entry.date), entry.class_id, entry.board_id, entry.piece,
                    entry.person.text, entry.text, entry.version,
                    entry.effort ? domain::write_number(*entry.effort) : std::string(),
                    std::string(name_of(entry.flag)), entry.entered_by, entry.key});
  const bool keyed = std::ranges::any_of(entries, [](const ScoreEntry& each) { return !each.key.empty(); });
  if (!keyed)
    for (std::vector<std::string>& row : rows) row.pop_back();
  return write_csv(rows);
}

std::string_view name_of(domain::DayFlag flag) {
  return flags[static_cast<std::size_t>(flag)];
}

std::optional<DayFlag> flag_of(std::string_view name) {
  const auto at = std::ranges::find(flags, name);
  return at == flags.end() ? std::nullopt : std::optional(static_cast<DayFlag>(at - flags.begin()));
}

}  // namespace repwright::store
