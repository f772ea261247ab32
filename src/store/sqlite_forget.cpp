// Somebody is forgotten: every table that may know them.
#include <fmt/format.h>

#include <algorithm>

#include "domain/people_search.hpp"
#include "store/class_json.hpp"
#include "store/forget.hpp"
#include "store/people_csv.hpp"
#include "store/sqlite_scores.hpp"
#include "store/sqlite_store.hpp"

namespace repwright::store {
namespace {

using base::ErrorCode;
using base::Result;

/// One transaction of forgetting.
class Forgetting {
 public:
  Forgetting(Sqlite& db, Leaver leaver) : db_(db), leaver_(std::move(leaver)) {}

  Result<domain::Forgotten> run(const domain::Catalogue& catalogue) {
    if (auto classes = in_classes(catalogue); !classes) return tl::unexpected(classes.error());
    in_scores();
    in_efforts();
    in_notes();
    for (const SqlRow& row : db_.rows("SELECT text FROM paper WHERE name = 'rankings'"))
      db_.rows("UPDATE paper SET text = ?1, version = version + 1 WHERE name = 'rankings'",
               {without_line(text_in(row[0]), leaver_.person.text)});
    db_.rows("DELETE FROM door WHERE person = ?1", {leaver_.person.text});
    in_boards();
    in_accounts();
    // After all else, so that the rows of before are written over as well.
    for (const char* table : {"part", "board_text", "class", "score_line", "effort", "note", "door", "paper"})
      rename(table, "saved_by");
    rename("trail", "who");
    rename("clock_act", "who");
    return done_;
  }

 private:
  Result<void> in_classes(const domain::Catalogue& catalogue) {
    for (const SqlRow& row : db_.rows("SELECT id, text FROM class ORDER BY id")) {
      const std::string id = text_in(row[0]);
      auto file = read_class(text_in(row[1]), db_.path().string() + ": class " + id, id, catalogue);
      if (!file) return tl::unexpected(file.error());
      if (!take_off(file->gym_class, leaver_)) continue;
      ++done_.classes;
      db_.rows("UPDATE class SET text = ?2, version = version + 1 WHERE id = ?1",
               {id, write_class(file->gym_class)});
    }
    return {};
  }

  void in_scores() {
    const std::string& person = leaver_.person.text;
    const std::vector<domain::KeptScore> lines = current_scores(db_);
    std::vector<domain::ScoreEntry> sheet;
    for (const domain::KeptScore& line : lines) {
      if (line.entry.person == leaver_.person) ++done_.scores;
      sheet.push_back(line.entry);
    }
    db_.rows(
        "DELETE FROM score_line AS line WHERE score IN (SELECT score FROM score_line WHERE person = ?1) "
        "AND version < (SELECT max(version) FROM score_line WHERE score = line.score)",
        {person});
    for (const std::size_t i : make_nameless(sheet, leaver_))
      db_.rows("UPDATE score_line SET person = ?3, entered_by = ?4 WHERE score = ?1 AND version = ?2",
               {lines[i].number, static_cast<std::int64_t>(lines[i].saved.version), sheet[i].person.text,
                sheet[i].entered_by});
    rename("score_line", "entered_by");
  }

  void in_efforts() {
    for (const SqlRow& row : db_.rows("SELECT class FROM effort WHERE person = ?1", {leaver_.person.text})) {
      const std::string id = text_in(row[0]);
      std::set<domain::PersonId> there;
      for (const SqlRow& other : db_.rows("SELECT person FROM effort WHERE class = ?1", {id}))
        there.insert({text_in(other[0])});
      db_.rows("UPDATE effort SET person = ?3 WHERE class = ?1 AND person = ?2",
               {id, leaver_.person.text, nameless_id(there).text});
      ++done_.efforts;
    }
  }

  void in_notes() {
    done_.notes =
        static_cast<int>(db_.number("SELECT count(*) FROM note WHERE person = ?1", {leaver_.person.text}));
    db_.rows("DELETE FROM note WHERE person = ?1", {leaver_.person.text});
    for (const SqlRow& row : db_.rows("SELECT number, text FROM note"))
      db_.rows("UPDATE note SET text = ?2 WHERE number = ?1",
               {row[0], nameless_text(text_in(row[1]), leaver_)});
  }

  void in_boards() {
    std::set<std::string> named;
    for (const SqlRow& row : db_.rows("SELECT board, version, text FROM board_text")) {
      const std::string text = text_in(row[2]);
      const std::string nameless = nameless_text(text, leaver_);
      if (nameless == text) continue;
      named.insert(text_in(row[0]));
      db_.rows("UPDATE board_text SET text = ?3 WHERE board = ?1 AND version = ?2",
               {row[0], row[1], nameless});
    }
    done_.boards = static_cast<int>(named.size());
  }

  void in_accounts() {
    for (const std::string& account : leaver_.accounts) {
      db_.rows("DELETE FROM browser WHERE account = ?1", {account});
      db_.rows("DELETE FROM account WHERE name = ?1", {account});
    }
    done_.accounts = static_cast<int>(leaver_.accounts.size());
    for (const SqlRow& row : db_.rows("SELECT number, what FROM trail")) {
      const std::string what = text_in(row[1]);
      if (const std::string nameless = nameless_trail(what, leaver_); nameless != what)
        db_.rows("UPDATE trail SET what = ?2 WHERE number = ?1", {row[0], nameless});
    }
  }

  /// Whoever wrote a row of the table as the leaver did it as somebody.
  void rename(const std::string& table, const std::string& column) {
    for (const SqlRow& row : db_.rows(fmt::format("SELECT DISTINCT {} FROM {}", column, table))) {
      const std::string who = text_in(row[0]);
      if (const std::string nameless = nameless_writer(who, leaver_); nameless != who)
        db_.rows(fmt::format("UPDATE {0} SET {1} = ?2 WHERE {1} = ?1", table, column), {who, nameless});
    }
  }

  Sqlite& db_;
  Leaver leaver_;
  domain::Forgotten done_;
};

std::set<std::string> accounts_of(Sqlite& db, const domain::PersonId& person) {
  std::set<std::string> names;
  for (const SqlRow& row : db.rows("SELECT name FROM account WHERE person = ?1", {person.text}))
    names.insert(text_in(row[0]));
  return names;
}

}  // namespace

Result<domain::Forgotten> SqliteStore::forget(const domain::PersonId& person,
                                              const domain::Catalogue& catalogue, const domain::Stamp& by) {
  auto done = file_.write([&](Sqlite& db) -> Result<domain::Forgotten> {
    const auto rows = db.rows("SELECT text FROM part WHERE kind = 'people'");
    if (rows.empty()) return base::failure(ErrorCode::NotFound, "no gym is kept here yet");
    auto file = read_people(text_in(rows[0][0]), db.path().string() + ": people", catalogue);
    if (!file) return tl::unexpected(file.error());
    const domain::Person* known = domain::find_person(file->people, person);
    if (known == nullptr)
      return base::failure(ErrorCode::NotFound, "no person is called '" + person.text + "'");
    Forgetting forgetting(db, {person, known->name, accounts_of(db, person)});
    std::erase_if(file->people, [&](const domain::Person& each) { return each.id == person; });
    db.rows("UPDATE part SET text = ?1, version = version + 1 WHERE kind = 'people'",
            {write_people(file->people)});
    auto forgotten = forgetting.run(catalogue);
    if (forgotten) leave_trail(db, by, somebody_forgotten);
    return forgotten;
  });
  if (!done) return done;
  // What was there may still lie between the rows, and in the file beside the database until it is emptied.
  const auto emptied = file_.alone([](Sqlite& db) -> Result<void> {
    db.run("VACUUM");
    db.rows("PRAGMA wal_checkpoint(TRUNCATE)");
    return {};
  });
  if (!emptied) return tl::unexpected(emptied.error());
  return done;
}

}  // namespace repwright::store
