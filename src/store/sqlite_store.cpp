#include "store/sqlite_store.hpp"

#include <system_error>

#include "base/civil_date.hpp"
#include "store/class_json.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"
#include "store/sqlite_schema.hpp"
#include "store/sqlite_scores.hpp"

namespace repwright::store {

namespace fs = std::filesystem;
using base::ErrorCode;
using base::Result;
using domain::Saved;
using domain::Seen;

namespace {

/// A text with how it lies in the file.
struct KeptText {
  std::string text;
  Saved saved;
};

/// Of the columns text, version, saved_by, saved_at, the first of them at `first`.
KeptText text_of(const SqlRow& row, std::size_t first) {
  return {text_in(row[first]),
          {static_cast<domain::Version>(number_in(row[first + 1])),
           domain::Stamp{text_in(row[first + 2]), instant_of(row[first + 3])}}};
}

/// Version 0 if the statement gives no row.
KeptText one_text(Sqlite& db, const std::string& sql, const std::string& key) {
  const auto found = db.rows(sql, {key});
  return found.empty() ? KeptText{} : text_of(found[0], 0);
}

KeptText part_in(Sqlite& db, const std::string& kind) {
  return one_text(db, "SELECT text, version, saved_by, saved_at FROM part WHERE kind = ?1", kind);
}
KeptText board_in(Sqlite& db, const std::string& id) {
  return one_text(db,
                  "SELECT text, version, saved_by, saved_at FROM board_text WHERE board = ?1 "
                  "ORDER BY version DESC LIMIT 1",
                  id);
}
KeptText paper_in(Sqlite& db, domain::Paper which) {
  return one_text(db, "SELECT text, version, saved_by, saved_at FROM paper WHERE name = ?1",
                  std::string(name_of(which)));
}
KeptText class_in(Sqlite& db, const std::string& id) {
  return one_text(db, "SELECT text, version, saved_by, saved_at FROM class WHERE id = ?1", id);
}

/// Who saved it: everything that this store writes has one.
domain::Stamp writer(const Saved& saved) {
  return saved.by.value_or(domain::Stamp{});
}

void put_part(Sqlite& db, const std::string& kind, const std::string& text, const Saved& saved) {
  db.rows(
      "INSERT INTO part (kind, version, text, saved_by, saved_at) VALUES (?1, ?2, ?3, ?4, ?5) "
      "ON CONFLICT (kind) DO UPDATE SET version = ?2, text = ?3, saved_by = ?4, saved_at = ?5",
      {kind, static_cast<std::int64_t>(saved.version), text, writer(saved).who,
       seconds_of(writer(saved).when)});
}
void put_board(Sqlite& db, const std::string& id, const std::string& text, const Saved& saved) {
  db.rows("INSERT OR IGNORE INTO board (id) VALUES (?1)", {id});
  db.rows("INSERT INTO board_text (board, version, text, saved_by, saved_at) VALUES (?1, ?2, ?3, ?4, ?5)",
          {id, static_cast<std::int64_t>(saved.version), text, writer(saved).who,
           seconds_of(writer(saved).when)});
}
void put_class(Sqlite& db, const domain::GymClass& gym_class, const Saved& saved) {
  db.rows(
      "INSERT INTO class (id, board, version, text, saved_by, saved_at) VALUES (?1, ?2, ?3, ?4, ?5, ?6) "
      "ON CONFLICT (id) DO UPDATE SET board = ?2, version = ?3, text = ?4, saved_by = ?5, saved_at = ?6",
      {gym_class.id, text_or_null(gym_class.board_id), static_cast<std::int64_t>(saved.version),
       write_class(gym_class), writer(saved).who, seconds_of(writer(saved).when)});
}

bool has_gym(Sqlite& db) {
  return part_in(db, "people").saved.version != 0;
}

bool has_board(Sqlite& db, const std::string& id) {
  return db.number("SELECT count(*) FROM board WHERE id = ?1", {id}) > 0;
}

/// Lets `put` keep the next version, unless another one than was seen lies there.
template <class Put>
Result<Saved> next_version(Sqlite& db, const std::string& what, const Saved& there, const Seen& seen,
                           const Put& put) {
  if (const auto error = stale(what, there.version, seen.version)) return tl::unexpected(*error);
  Saved next{there.version + 1, seen.by};
  put(next);
  leave_trail(db, seen.by, what);
  return next;
}

/// Reads a gym out of the tables, every text by the reader of its file.
class TableReader {
 public:
  TableReader(Sqlite& db, const domain::Catalogue& catalogue) : db_(db), catalogue_(catalogue) {}

  Result<KeptGym> read() {
    if (!has_gym(db_)) return base::failure(ErrorCode::NotFound, "no gym is kept here yet");
    return read_parts().and_then([&] { return read_classes(); }).map([&] {
      read_boards();
      for (domain::KeptScore& score : current_scores(db_)) kept_.gym.scores.push_back(std::move(score.entry));
      kept_.versions.movements = part_in(db_, "movements").saved;
      return std::move(kept_);
    });
  }

 private:
  Result<void> read_parts() {
    const KeptText people = part_in(db_, "people");
    auto people_file = read_people(people.text, name("people"), catalogue_);
    if (!people_file) return tl::unexpected(people_file.error());
    const KeptText hall = part_in(db_, "hall");
    auto hall_file = read_hall(hall.text, name("hall"), catalogue_);
    if (!hall_file) return tl::unexpected(hall_file.error());
    const KeptText house = part_in(db_, "house");
    auto house_file = read_house(house.text, name("house"), catalogue_);
    if (!house_file) return tl::unexpected(house_file.error());
    kept_.gym.people = std::move(people_file->people);
    kept_.gym.hall = std::move(hall_file->hall);
    kept_.gym.house = std::move(house_file->house);
    kept_.versions.people = people.saved;
    kept_.versions.hall = hall.saved;
    kept_.versions.house = house.saved;
    return {};
  }
  Result<void> read_classes() {
    for (const SqlRow& row :
         db_.rows("SELECT id, text, version, saved_by, saved_at FROM class ORDER BY id")) {
      const std::string id = text_in(row[0]);
      const KeptText kept = text_of(row, 1);
      auto file = read_class(kept.text, name("class " + id), id, catalogue_);
      if (!file) return tl::unexpected(file.error());
      kept_.gym.classes[id] = std::move(file->gym_class);
      kept_.versions.classes[id] = kept.saved;
    }
    return {};
  }
  void read_boards() {
    for (const SqlRow& row : db_.rows("SELECT id FROM board ORDER BY id")) {
      const std::string id = text_in(row[0]);
      KeptText kept = board_in(db_, id);
      kept_.gym.boards[id] = std::move(kept.text);
      kept_.versions.boards[id] = kept.saved;
    }
  }
  std::string name(const std::string& what) const { return db_.path().string() + ": " + what; }

  Sqlite& db_;
  const domain::Catalogue& catalogue_;
  KeptGym kept_;
};

}  // namespace

Result<std::unique_ptr<SqliteStore>> SqliteStore::open(const fs::path& path, const SqliteOptions& options) {
  try {
    std::error_code ignored;
    if (options.access == SqliteAccess::WriteOrMake && path.has_parent_path())
      fs::create_directories(path.parent_path(), ignored);
    Sqlite db(path, options);
    // A file of another program, or of a newer one, is left as it is.
    check_is_ours(db);
    db.rows("PRAGMA journal_mode = WAL");
    db.run(
        "PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF; "
        "PRAGMA secure_delete = ON");
    bring_up_to_date(db);
    Sqlite reading(path, {.access = SqliteAccess::Write, .patience = options.patience, .most_pages = {}});
    reading.run("PRAGMA query_only = ON; PRAGMA trusted_schema = OFF");
    return std::unique_ptr<SqliteStore>(new SqliteStore(std::move(db), std::move(reading)));
  } catch (const SqliteFailure& failure) {
    return tl::unexpected(failure.error);
  }
}

Result<std::uint64_t> SqliteStore::mark() {
  return file_.alone([](Sqlite& db) -> Result<std::uint64_t> {
    return static_cast<std::uint64_t>(db.number("PRAGMA data_version"));
  });
}

Result<std::optional<std::string>> SqliteStore::own_movements() {
  return file_.read([](Sqlite& db) -> Result<std::optional<std::string>> {
    KeptText kept = part_in(db, "movements");
    if (kept.saved.version == 0) return std::optional<std::string>();
    return std::optional(std::move(kept.text));
  });
}

Result<KeptGym> SqliteStore::gym(const domain::Catalogue& catalogue) {
  return file_.read([&](Sqlite& db) { return TableReader(db, catalogue).read(); });
}

Result<void> SqliteStore::put_gym(const GymFolder& gym, const std::optional<std::string>& own_movements,
                                  const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (has_gym(db))
      return base::failure(ErrorCode::Conflict, db.path().string() + ": a gym is kept here already");
    if (auto fine = check_ids(gym); !fine) return fine;
    const Saved first{1, by};
    put_part(db, "people", write_people(gym.people), first);
    put_part(db, "hall", write_hall(gym.hall), first);
    put_part(db, "house", write_house(gym.house), first);
    if (own_movements) put_part(db, "movements", *own_movements, first);
    for (const auto& [id, text] : gym.boards) put_board(db, id, text, first);
    for (const auto& [id, gym_class] : gym.classes) put_class(db, gym_class, first);
    for (const domain::ScoreEntry& entry : gym.scores) new_score(db, entry, by);
    leave_trail(db, by, "gym");
    return {};
  });
}

Result<Saved> SqliteStore::save_part(const std::string& kind, const std::string& text, const Seen& seen) {
  return file_.write([&](Sqlite& db) {
    return next_version(db, kind, part_in(db, kind).saved, seen,
                        [&](const Saved& next) { put_part(db, kind, text, next); });
  });
}

Result<Saved> SqliteStore::save_people(const std::vector<domain::Person>& people, const Seen& seen) {
  return save_part("people", write_people(people), seen);
}
Result<Saved> SqliteStore::save_hall(const domain::Hall& hall, const Seen& seen) {
  return save_part("hall", write_hall(hall), seen);
}
Result<Saved> SqliteStore::save_house(const domain::House& house, const Seen& seen) {
  return save_part("house", write_house(house), seen);
}
Result<Saved> SqliteStore::save_own_movements(const std::string& toml, const Seen& seen) {
  return save_part("movements", toml, seen);
}

Result<domain::KeptPaper> SqliteStore::paper(domain::Paper which) {
  return file_.read([&](Sqlite& db) -> Result<domain::KeptPaper> {
    KeptText kept = paper_in(db, which);
    return domain::KeptPaper{std::move(kept.saved), std::move(kept.text)};
  });
}

Result<Saved> SqliteStore::save_paper(domain::Paper which, const std::string& text, const Seen& seen) {
  return file_.write([&](Sqlite& db) -> Result<Saved> {
    const std::string name(name_of(which));
    return next_version(db, name, paper_in(db, which).saved, seen, [&](const Saved& next) {
      db.rows(
          "INSERT INTO paper (name, version, text, saved_by, saved_at) VALUES (?1, ?2, ?3, ?4, ?5) "
          "ON CONFLICT (name) DO UPDATE SET version = ?2, text = ?3, saved_by = ?4, saved_at = ?5",
          {name, static_cast<std::int64_t>(next.version), text, writer(next).who,
           seconds_of(writer(next).when)});
    });
  });
}

Result<Saved> SqliteStore::save_board(const std::string& id, const std::string& text, const Seen& seen) {
  if (auto fine = check_id(id); !fine) return tl::unexpected(fine.error());
  return file_.write([&](Sqlite& db) {
    return next_version(db, "board " + id, board_in(db, id).saved, seen,
                        [&](const Saved& next) { put_board(db, id, text, next); });
  });
}

Result<Saved> SqliteStore::save_class(const domain::GymClass& gym_class, const Seen& seen) {
  if (auto fine = check_id(gym_class.id); !fine) return tl::unexpected(fine.error());
  return file_.write([&](Sqlite& db) -> Result<Saved> {
    const std::string& board = gym_class.board_id;
    if (!board.empty() && !has_board(db, board))
      return base::failure(ErrorCode::Invalid, "no board is called '" + board + "'");
    return next_version(db, "class " + gym_class.id, class_in(db, gym_class.id).saved, seen,
                        [&](const Saved& next) { put_class(db, gym_class, next); });
  });
}

Result<void> SqliteStore::remove_class(const std::string& id, const Seen& seen) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    const auto lines = static_cast<std::int64_t>(current_scores_of_class(db, id).size()) +
                       db.number("SELECT count(*) FROM effort WHERE class = ?1", {id});
    if (const auto error = holds_class(id, class_in(db, id).saved.version, seen.version, lines))
      return tl::unexpected(*error);
    db.rows("DELETE FROM clock_act WHERE class = ?1", {id});
    db.rows("DELETE FROM door WHERE class = ?1", {id});
    db.rows("DELETE FROM class WHERE id = ?1", {id});
    leave_trail(db, seen.by, "class " + id + ": taken away");
    return {};
  });
}

Result<std::vector<domain::BoardVersion>> SqliteStore::board_versions(const std::string& id) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<domain::BoardVersion>> {
    if (!has_board(db, id)) return base::failure(ErrorCode::NotFound, "no board is called '" + id + "'");
    std::vector<domain::BoardVersion> out;
    for (const SqlRow& row : db.rows("SELECT text, version, saved_by, saved_at FROM board_text "
                                     "WHERE board = ?1 ORDER BY version",
                                     {id})) {
      KeptText kept = text_of(row, 0);
      out.push_back({kept.saved, std::move(kept.text)});
    }
    return out;
  });
}

Result<void> SqliteStore::back_up(const fs::path& to) {
  std::error_code error;
  if (fs::exists(to, error))
    return base::failure(ErrorCode::Conflict, to.string() + ": is there already, and is not written over");
  return file_.alone([&](Sqlite& db) -> Result<void> {
    db.rows("VACUUM INTO ?1", {to.string()});
    return {};
  });
}

Result<void> restore(const fs::path& backup, const fs::path& to) {
  try {
    Sqlite from(backup, {.access = SqliteAccess::Read, .most_pages = std::nullopt});
    check_is_ours(from);
    Sqlite into(to, {.access = SqliteAccess::WriteOrMake, .most_pages = std::nullopt});
    check_is_ours(into);
    from.copy_into(into);
    return {};
  } catch (const SqliteFailure& failure) {
    return tl::unexpected(failure.error);
  }
}

}  // namespace repwright::store
