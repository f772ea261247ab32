// What grows line by line: scores, effort, notes, the trail.
#include "base/civil_date.hpp"
#include "store/sqlite_scores.hpp"
#include "store/sqlite_store.hpp"

namespace repwright::store {

using base::ErrorCode;
using base::Result;
using domain::KeptScore;
using domain::Saved;

Result<std::vector<KeptScore>> SqliteStore::scores() {
  return file_.read([](Sqlite& db) -> Result<std::vector<KeptScore>> { return current_scores(db); });
}

Result<std::int64_t> SqliteStore::add_score(const domain::ScoreEntry& entry, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<std::int64_t> {
    const std::int64_t number = new_score(db, entry, by);
    leave_trail(db, by, "score " + std::to_string(number));
    return number;
  });
}

Result<Saved> SqliteStore::correct_score(std::int64_t number, const domain::ScoreEntry& entry,
                                         const domain::Seen& seen) {
  return file_.write([&](Sqlite& db) -> Result<Saved> {
    const auto versions = versions_of_score(db, number);
    if (versions.empty()) return base::failure(ErrorCode::NotFound, "there is no such score");
    const std::string what = "score " + std::to_string(number);
    const Saved& there = versions.back().saved;
    if (const auto error = stale(what, there.version, seen.version)) return tl::unexpected(*error);
    Saved next{there.version + 1, seen.by};
    put_score_version(db, number, entry, next);
    leave_trail(db, seen.by, what);
    return next;
  });
}

Result<std::vector<KeptScore>> SqliteStore::score_versions(std::int64_t number) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<KeptScore>> {
    auto versions = versions_of_score(db, number);
    if (versions.empty()) return base::failure(ErrorCode::NotFound, "there is no such score");
    return versions;
  });
}

Result<void> SqliteStore::put_effort(const domain::ClassEffort& effort, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (db.number("SELECT count(*) FROM class WHERE id = ?1", {effort.class_id}) == 0)
      return base::failure(ErrorCode::NotFound, "no class is called '" + effort.class_id + "'");
    db.rows(
        "INSERT OR REPLACE INTO effort (class, person, effort, saved_by, saved_at) "
        "VALUES (?1, ?2, ?3, ?4, ?5)",
        {effort.class_id, effort.person.text, effort.effort, by.who, seconds_of(by.when)});
    leave_trail(db, by, "effort " + effort.class_id);
    return {};
  });
}

Result<std::vector<domain::ClassEffort>> SqliteStore::efforts(const std::string& class_id) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<domain::ClassEffort>> {
    std::vector<domain::ClassEffort> out;
    for (const SqlRow& row :
         db.rows("SELECT class, person, effort FROM effort WHERE class = ?1 ORDER BY person", {class_id}))
      out.push_back({text_in(row[0]), {text_in(row[1])}, real_in(row[2]).value_or(0)});
    return out;
  });
}

Result<void> SqliteStore::add_note(const domain::Note& note, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    const std::string today = base::format_date(std::chrono::floor<std::chrono::days>(by.when));
    db.rows("DELETE FROM note WHERE until < ?1", {today});
    const SqlValue until = note.until ? SqlValue(base::format_date(*note.until)) : SqlValue();
    db.rows("INSERT INTO note (person, text, until, saved_by, saved_at) VALUES (?1, ?2, ?3, ?4, ?5)",
            {note.person.text, note.text, until, by.who, seconds_of(by.when)});
    leave_trail(db, by, "note");
    return {};
  });
}

Result<std::vector<domain::Note>> SqliteStore::notes_on(std::chrono::year_month_day day) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<domain::Note>> {
    std::vector<domain::Note> out;
    for (const SqlRow& row :
         db.rows("SELECT person, text, until FROM note WHERE until IS NULL OR until >= ?1 ORDER BY number",
                 {base::format_date(day)})) {
      domain::Note note{{text_in(row[0])}, text_in(row[1]), std::nullopt};
      if (const auto until = base::parse_date(text_in(row[2]))) note.until = *until;
      out.push_back(std::move(note));
    }
    return out;
  });
}

Result<std::vector<domain::TrailLine>> SqliteStore::trail(int most) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<domain::TrailLine>> {
    std::vector<domain::TrailLine> out;
    for (const SqlRow& row :
         db.rows("SELECT who, at, what FROM trail ORDER BY number DESC LIMIT ?1", {std::int64_t{most}}))
      out.push_back({{text_in(row[0]), instant_of(row[1])}, text_in(row[2])});
    return out;
  });
}

}  // namespace repwright::store
