#include "store/sqlite_scores.hpp"

#include "base/civil_date.hpp"
#include "store/sqlite_file.hpp"

namespace repwright::store {
namespace {

using domain::KeptScore;

constexpr const char* columns =
    "SELECT score, version, day, class, board, piece, person, entry, movement_version, effort, flag, "
    "entered_by, saved_by, saved_at, (SELECT key FROM score WHERE number = line.score) FROM score_line AS "
    "line ";

KeptScore score_of(const SqlRow& row) {
  KeptScore out;
  out.number = number_in(row[0]);
  domain::ScoreEntry& entry = out.entry;
  if (const auto day = base::parse_date(text_in(row[2]))) entry.date = *day;
  entry.class_id = text_in(row[3]);
  entry.board_id = text_in(row[4]);
  entry.piece = text_in(row[5]);
  entry.person = {text_in(row[6])};
  entry.text = text_in(row[7]);
  entry.value = domain::read_score(entry.text);
  entry.version = text_in(row[8]);
  entry.effort = real_in(row[9]);
  entry.flag = static_cast<domain::DayFlag>(number_in(row[10]));
  entry.entered_by = text_in(row[11]);
  out.saved = {static_cast<domain::Version>(number_in(row[1])),
               domain::Stamp{text_in(row[12]), instant_of(row[13])}};
  entry.key = text_in(row[14]);
  return out;
}

std::vector<KeptScore> scores_of(const std::vector<SqlRow>& rows) {
  std::vector<KeptScore> out;
  out.reserve(rows.size());
  for (const SqlRow& row : rows) out.push_back(score_of(row));
  return out;
}

}  // namespace

std::vector<KeptScore> current_scores(Sqlite& db) {
  return scores_of(db.rows(std::string(columns) +
                           "WHERE version = (SELECT max(version) FROM score_line WHERE score = line.score) "
                           "ORDER BY score"));
}

std::vector<KeptScore> current_scores_of_class(Sqlite& db, const std::string& class_id) {
  return scores_of(db.rows(std::string(columns) +
                               "WHERE class = ?1 AND version = (SELECT max(version) FROM score_line WHERE "
                               "score = line.score) ORDER BY score",
                           {class_id}));
}

std::vector<KeptScore> versions_of_score(Sqlite& db, std::int64_t number) {
  return scores_of(db.rows(std::string(columns) + "WHERE score = ?1 ORDER BY version", {number}));
}

std::optional<std::int64_t> score_of_key(Sqlite& db, const std::string& key) {
  const auto rows = db.rows("SELECT number FROM score WHERE key <> '' AND key = ?1", {key});
  return rows.empty() ? std::nullopt : std::optional(number_in(rows[0][0]));
}

std::int64_t new_score(Sqlite& db, const domain::ScoreEntry& entry, const domain::Stamp& by) {
  db.rows("INSERT INTO score (key) VALUES (?1)", {entry.key});
  const std::int64_t number = db.last_number();
  put_score_version(db, number, entry, {1, by});
  return number;
}

void put_score_version(Sqlite& db, std::int64_t number, const domain::ScoreEntry& entry,
                       const domain::Saved& saved) {
  const domain::Stamp by = saved.by.value_or(domain::Stamp{});
  db.rows(
      "INSERT INTO score_line (score, version, day, class, board, piece, person, entry, movement_version, "
      "effort, flag, entered_by, saved_by, saved_at) "
      "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14)",
      {number, static_cast<std::int64_t>(saved.version), base::format_date(entry.date), entry.class_id,
       entry.board_id, entry.piece, entry.person.text, entry.text, entry.version, real_or_null(entry.effort),
       static_cast<std::int64_t>(entry.flag), entry.entered_by, by.who, seconds_of(by.when)});
}

}  // namespace repwright::store
