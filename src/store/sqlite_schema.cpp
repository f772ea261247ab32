#include "store/sqlite_schema.hpp"

#include <array>

namespace repwright::store {
namespace {

using base::ErrorCode;

/// 'Rpwt', in the header of every file of ours.
constexpr std::int64_t application_id = 0x52707774;

/// Step n makes schema n of schema n - 1. What was shipped once is never edited: add a step.
/// Times are seconds since 1970 (UTC), days are ISO 8601. A part of the gym is the text of its file in the
/// gym folder: docs/decisions/sqlite.md says why.
constexpr std::array<const char*, 7> steps{
    R"sql(
CREATE TABLE part (
  kind TEXT PRIMARY KEY CHECK (kind IN ('people', 'hall', 'house', 'movements')),
  version INTEGER NOT NULL CHECK (version > 0),
  text TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL
) STRICT;
CREATE TABLE board (id TEXT PRIMARY KEY) STRICT;
CREATE TABLE board_text (
  board TEXT NOT NULL REFERENCES board (id),
  version INTEGER NOT NULL CHECK (version > 0),
  text TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL,
  PRIMARY KEY (board, version)
) STRICT;
CREATE TABLE class (
  id TEXT PRIMARY KEY,
  board TEXT REFERENCES board (id),
  version INTEGER NOT NULL CHECK (version > 0),
  text TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL
) STRICT;
CREATE TABLE score (number INTEGER PRIMARY KEY AUTOINCREMENT) STRICT;
CREATE TABLE score_line (
  score INTEGER NOT NULL REFERENCES score (number),
  version INTEGER NOT NULL CHECK (version > 0),
  day TEXT NOT NULL, class TEXT NOT NULL, board TEXT NOT NULL, piece TEXT NOT NULL, person TEXT NOT NULL,
  entry TEXT NOT NULL, movement_version TEXT NOT NULL,
  effort REAL CHECK (effort BETWEEN 0 AND 10),
  flag INTEGER NOT NULL CHECK (flag BETWEEN 0 AND 3),
  entered_by TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL,
  PRIMARY KEY (score, version)
) STRICT;
)sql",
    R"sql(
CREATE TABLE effort (
  class TEXT NOT NULL REFERENCES class (id),
  person TEXT NOT NULL,
  effort REAL NOT NULL CHECK (effort BETWEEN 0 AND 10),
  saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL,
  PRIMARY KEY (class, person)
) STRICT;
CREATE TABLE note (
  number INTEGER PRIMARY KEY,
  person TEXT NOT NULL, text TEXT NOT NULL, until TEXT,
  saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL
) STRICT;
)sql",
    R"sql(
CREATE TABLE trail (
  number INTEGER PRIMARY KEY AUTOINCREMENT,
  who TEXT NOT NULL, at INTEGER NOT NULL, what TEXT NOT NULL
) STRICT;
CREATE TABLE account (
  name TEXT PRIMARY KEY,
  role TEXT NOT NULL CHECK (role IN ('owner', 'coach', 'relief', 'person')),
  secret_hash TEXT NOT NULL, link_hash TEXT NOT NULL, class TEXT NOT NULL, person TEXT NOT NULL
) STRICT;
CREATE TABLE browser (
  token_hash TEXT PRIMARY KEY,
  account TEXT NOT NULL REFERENCES account (name) ON DELETE CASCADE,
  until INTEGER NOT NULL
) STRICT;
CREATE INDEX browser_of_account ON browser (account);
)sql",
    R"sql(
ALTER TABLE note RENAME TO old_note;
CREATE TABLE note (
  number INTEGER PRIMARY KEY AUTOINCREMENT,
  person TEXT NOT NULL, text TEXT NOT NULL, until TEXT,
  saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL
) STRICT;
INSERT INTO note SELECT number, person, text, until, saved_by, saved_at FROM old_note;
DROP TABLE old_note;
)sql",
    R"sql(
ALTER TABLE score ADD COLUMN key TEXT NOT NULL DEFAULT '';
CREATE UNIQUE INDEX score_of_key ON score (key) WHERE key <> '';
CREATE TABLE door (
  number INTEGER PRIMARY KEY AUTOINCREMENT,
  class TEXT NOT NULL, person TEXT NOT NULL,
  act INTEGER NOT NULL CHECK (act BETWEEN 0 AND 3),
  seen INTEGER NOT NULL, key TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX door_of_key ON door (key) WHERE key <> '';
CREATE TABLE paper (
  name TEXT PRIMARY KEY CHECK (name IN ('emergency', 'rankings')),
  version INTEGER NOT NULL CHECK (version > 0),
  text TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL
) STRICT;
)sql",
    R"sql(
CREATE TABLE clock_act (
  class TEXT NOT NULL REFERENCES class (id),
  number INTEGER NOT NULL CHECK (number > 0),
  deed TEXT NOT NULL, at_ms INTEGER NOT NULL, cue TEXT NOT NULL, seconds REAL NOT NULL,
  key TEXT NOT NULL, who TEXT NOT NULL,
  PRIMARY KEY (class, number),
  UNIQUE (class, key)
) STRICT;
)sql",
    R"sql(
CREATE INDEX score_line_of_class ON score_line (class);
ALTER TABLE note ADD COLUMN key TEXT NOT NULL DEFAULT '';
CREATE UNIQUE INDEX note_of_key ON note (key) WHERE key <> '';
ALTER TABLE effort ADD COLUMN key TEXT NOT NULL DEFAULT '';
CREATE TABLE old_browser AS SELECT token_hash, account, until FROM browser;
CREATE TABLE old_account AS SELECT name, role, secret_hash, link_hash, class, person FROM account;
DROP TABLE browser;
DROP TABLE account;
CREATE TABLE account (
  name TEXT PRIMARY KEY,
  role TEXT NOT NULL CHECK (role IN ('owner', 'coach', 'relief', 'person', 'screen')),
  secret_hash TEXT NOT NULL, link_hash TEXT NOT NULL, class TEXT NOT NULL, person TEXT NOT NULL
) STRICT;
CREATE TABLE browser (
  token_hash TEXT PRIMARY KEY,
  account TEXT NOT NULL REFERENCES account (name) ON DELETE CASCADE,
  until INTEGER NOT NULL
) STRICT;
CREATE INDEX browser_of_account ON browser (account);
INSERT INTO account SELECT * FROM old_account;
INSERT INTO browser SELECT * FROM old_browser;
DROP TABLE old_browser;
DROP TABLE old_account;
)sql",
};

std::int64_t schema_of(Sqlite& db) {
  return db.number("PRAGMA user_version");
}

}  // namespace

int newest_schema() {
  return static_cast<int>(steps.size());
}

void check_is_ours(Sqlite& db) {
  const bool empty = db.number("SELECT count(*) FROM sqlite_schema") == 0;
  if (!empty && db.number("PRAGMA application_id") != application_id)
    throw db.failure(ErrorCode::NotADatabase, "is the database of another program");
  if (schema_of(db) > newest_schema())
    throw db.failure(ErrorCode::NewerSchema,
                     "was written by a newer version of this program; use that one, or a backup of before");
  const auto faults = db.rows("PRAGMA quick_check(1)");
  if (faults.empty() || text_in(faults[0][0]) != "ok")
    throw db.failure(ErrorCode::NotADatabase, "is damaged; `repwright restore` brings a backup back");
}

void bring_up_to_date(Sqlite& db, int to) {
  check_is_ours(db);
  if (schema_of(db) >= to) return;
  db.run("BEGIN IMMEDIATE");
  // Another program may have done it while we waited.
  for (auto step = schema_of(db); step < to; ++step) {
    db.run(steps[static_cast<std::size_t>(step)]);
    db.run("PRAGMA user_version = " + std::to_string(step + 1));
  }
  db.run("PRAGMA application_id = " + std::to_string(application_id));
  db.run("COMMIT");
}

}  // namespace repwright::store
