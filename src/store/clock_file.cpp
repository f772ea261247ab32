#include "store/clock_file.hpp"

#include <fmt/format.h>

#include <charconv>
#include <optional>

#include "store/csv.hpp"

namespace repwright::store {
namespace {

using domain::ClockAct;

const std::vector<std::string> columns{"deed", "at_ms", "cue", "seconds", "key", "who"};

std::optional<std::int64_t> whole(const std::string& cell) {
  std::int64_t number = 0;
  const char* const end = cell.data() + cell.size();
  const auto [at, error] = std::from_chars(cell.data(), end, number);
  return error == std::errc{} && at == end ? std::optional(number) : std::nullopt;
}

std::optional<ClockAct> act_of(const std::vector<std::string>& cells) {
  const auto deed = domain::clock_deed_of(cells[0]);
  const auto at = whole(cells[1]);
  const auto seconds = whole(cells[3]);
  if (!deed || !at || !seconds) return std::nullopt;
  return ClockAct{.deed = *deed,
                  .at_ms = *at,
                  .cue = cells[2],
                  .seconds = base::Duration::from_si(static_cast<double>(*seconds)),
                  .key = cells[4],
                  .who = cells[5]};
}

}  // namespace

base::Result<std::vector<ClockAct>> read_clock(std::string_view bytes, const std::string& file) {
  Problems problems;
  std::vector<ClockAct> acts;
  const auto table = read_csv(bytes, file, problems);
  if (table && table->header != columns)
    problems.add({file, 1, "", "", "is no clock of a class: its columns are others"});
  if (!problems.empty() || !table) return tl::unexpected(problems.error());
  for (const CsvRow& row : table->rows) {
    if (auto act = act_of(row.cells))
      acts.push_back(std::move(*act));
    else
      problems.add({file, row.line, "", "", "is no act of a clock"});
  }
  if (!problems.empty()) return tl::unexpected(problems.error());
  return acts;
}

std::string write_clock(const std::vector<ClockAct>& acts) {
  std::vector<std::vector<std::string>> rows{columns};
  for (const ClockAct& act : acts)
    rows.push_back({std::string(domain::name_of(act.deed)), fmt::format("{}", act.at_ms), act.cue,
                    fmt::format("{:.0f}", act.seconds.si()), act.key, act.who});
  return write_csv(rows);
}

}  // namespace repwright::store
