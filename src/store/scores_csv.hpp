#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/score.hpp"

namespace repwright::store {

struct ScoresFile {
  std::vector<domain::ScoreEntry> entries;  // in the order of the file
  std::vector<std::string> notes;           // columns left out, scores kept as words
};

/// A scores file (docs/guide/gym-folder.md). A score that is no number, time or count is kept as words and
/// noted. Fails with Invalid, naming every bad cell by row and column at once.
base::Result<ScoresFile> read_scores(std::string_view bytes, const std::string& file);

/// The file that `read_scores` reads as these entries.
std::string write_scores(const std::vector<domain::ScoreEntry>& entries);

/// As in the column `flag`; empty for an ordinary day.
std::string_view name_of(domain::DayFlag flag);
/// Nothing for any other word.
std::optional<domain::DayFlag> flag_of(std::string_view name);

}  // namespace repwright::store
