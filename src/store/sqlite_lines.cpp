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

Result<std::vector<KeptScore>> SqliteStore::scores_of_class(const std::string& class_id) {
  return file_.read(
      [&](Sqlite& db) -> Result<std::vector<KeptScore>> { return current_scores_of_class(db, class_id); });
}

Result<std::vector<domain::AddedScore>> SqliteStore::add_scores(const std::vector<domain::NewScore>& scores) {
  return file_.write([&](Sqlite& db) -> Result<std::vector<domain::AddedScore>> {
    std::vector<domain::AddedScore> added;
    for (const auto& [entry, by] : scores) {
      if (const auto known = score_of_key(db, entry.key)) {
        added.push_back({*known, false});
        continue;
      }
      added.push_back({new_score(db, entry, by), true});
      leave_trail(db, by, "score " + std::to_string(added.back().number));
    }
    return added;
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
    if (!effort.key.empty() &&
        db.number("SELECT count(*) FROM effort WHERE class = ?1 AND person = ?2 AND key = ?3",
                  {effort.class_id, effort.person.text, effort.key}) > 0)
      return {};
    db.rows(
        "INSERT OR REPLACE INTO effort (class, person, effort, key, saved_by, saved_at) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        {effort.class_id, effort.person.text, effort.effort, effort.key, by.who, seconds_of(by.when)});
    leave_trail(db, by, "effort " + effort.class_id);
    return {};
  });
}

Result<std::vector<domain::ClassEffort>> SqliteStore::efforts(const std::string& class_id) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<domain::ClassEffort>> {
    std::vector<domain::ClassEffort> out;
    for (const SqlRow& row : db.rows(
             "SELECT class, person, effort, key FROM effort WHERE class = ?1 ORDER BY person", {class_id}))
      out.push_back({text_in(row[0]), {text_in(row[1])}, real_in(row[2]).value_or(0), text_in(row[3])});
    return out;
  });
}

Result<std::int64_t> SqliteStore::add_door_line(const domain::DoorLine& line, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<std::int64_t> {
    const auto known = db.rows("SELECT number FROM door WHERE key <> '' AND key = ?1", {line.key});
    if (!known.empty()) return number_in(known[0][0]);
    db.rows(
        "INSERT INTO door (class, person, act, seen, key, saved_by, saved_at) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
        {line.class_id, line.person.text, static_cast<std::int64_t>(line.act), seconds_of(line.seen),
         line.key, by.who, seconds_of(by.when)});
    return db.last_number();
  });
}

Result<std::vector<domain::KeptDoorLine>> SqliteStore::door_lines(const std::string& class_id) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<domain::KeptDoorLine>> {
    std::vector<domain::KeptDoorLine> out;
    for (const SqlRow& row : db.rows("SELECT number, saved_by, saved_at, class, person, act, seen, key "
                                     "FROM door WHERE class = ?1 ORDER BY number",
                                     {class_id}))
      out.push_back({number_in(row[0]),
                     {text_in(row[1]), instant_of(row[2])},
                     {text_in(row[3]),
                      {text_in(row[4])},
                      static_cast<domain::DoorAct>(number_in(row[5])),
                      instant_of(row[6]),
                      text_in(row[7])}});
    return out;
  });
}

Result<std::int64_t> SqliteStore::add_note(const domain::Note& note, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<std::int64_t> {
    const auto known = db.rows("SELECT number FROM note WHERE key <> '' AND key = ?1", {note.key});
    if (!known.empty()) return number_in(known[0][0]);
    const std::string today = base::format_date(std::chrono::floor<std::chrono::days>(by.when));
    db.rows("DELETE FROM note WHERE until < ?1", {today});
    const SqlValue until = note.until ? SqlValue(base::format_date(*note.until)) : SqlValue();
    db.rows("INSERT INTO note (person, text, until, key, saved_by, saved_at) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
            {note.person.text, note.text, until, note.key, by.who, seconds_of(by.when)});
    const std::int64_t number = db.last_number();
    leave_trail(db, by, "note " + std::to_string(number));
    return number;
  });
}

Result<std::vector<domain::KeptNote>> SqliteStore::notes_on(std::chrono::year_month_day day) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<domain::KeptNote>> {
    std::vector<domain::KeptNote> out;
    for (const SqlRow& row : db.rows("SELECT number, saved_by, saved_at, person, text, until, key FROM note "
                                     "WHERE until IS NULL OR until >= ?1 ORDER BY number",
                                     {base::format_date(day)})) {
      domain::KeptNote kept{number_in(row[0]),
                            {text_in(row[1]), instant_of(row[2])},
                            {{text_in(row[3])}, text_in(row[4]), std::nullopt, text_in(row[6])}};
      if (const auto until = base::parse_date(text_in(row[5]))) kept.note.until = *until;
      out.push_back(std::move(kept));
    }
    return out;
  });
}

Result<void> SqliteStore::remove_note(std::int64_t number, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (db.number("SELECT count(*) FROM note WHERE number = ?1", {number}) == 0)
      return base::failure(ErrorCode::NotFound, "there is no such note");
    db.rows("DELETE FROM note WHERE number = ?1", {number});
    leave_trail(db, by, "note " + std::to_string(number) + ": taken away");
    return {};
  });
}

Result<std::vector<domain::TrailLine>> SqliteStore::trail(const domain::TrailPage& page) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<domain::TrailLine>> {
    std::vector<domain::TrailLine> out;
    const SqlValue before = page.before ? SqlValue(*page.before) : SqlValue();
    for (const SqlRow& row : db.rows("SELECT number, who, at, what FROM trail "
                                     "WHERE ?2 IS NULL OR number < ?2 ORDER BY number DESC LIMIT ?1",
                                     {std::int64_t{page.most}, before}))
      out.push_back({number_in(row[0]), {text_in(row[1]), instant_of(row[2])}, text_in(row[3])});
    return out;
  });
}

}  // namespace repwright::store
