#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "domain/kept.hpp"
#include "store/sqlite.hpp"

/// The score sheet in the tables of a database file, inside somebody's transaction. Throws SqliteFailure.
namespace repwright::store {

/// What the lines say now, in the order of entry.
std::vector<domain::KeptScore> current_scores(Sqlite& db);
/// The same, of one class.
std::vector<domain::KeptScore> current_scores_of_class(Sqlite& db, const std::string& class_id);
/// All that one line ever said, oldest first; empty if there is no such line.
std::vector<domain::KeptScore> versions_of_score(Sqlite& db, std::int64_t number);
/// The line that was sent with that key.
std::optional<std::int64_t> score_of_key(Sqlite& db, const std::string& key);
/// A new line; its number.
std::int64_t new_score(Sqlite& db, const domain::ScoreEntry& entry, const domain::Stamp& by);
/// What the line says from now on.
void put_score_version(Sqlite& db, std::int64_t number, const domain::ScoreEntry& entry,
                       const domain::Saved& saved);

}  // namespace repwright::store
