#pragma once

#include <mutex>
#include <string>
#include <utility>

#include "domain/kept.hpp"
#include "store/sqlite.hpp"

namespace repwright::store {

/// A database file that several threads work in, one transaction after another.
class SqliteFile {
 public:
  explicit SqliteFile(Sqlite db) : db_(std::move(db)) {}

  /// Lets `work` read one state of the file. What SQLite throws becomes the error.
  template <class Work>
  auto read(const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
    return in_transaction("BEGIN", work);
  }
  /// Lets `work` write; kept as a whole if it succeeds, else nothing of it.
  template <class Work>
  auto write(const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
    return in_transaction("BEGIN IMMEDIATE", work);
  }
  /// Work that cannot stand in a transaction.
  template <class Work>
  auto alone(const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
    const std::scoped_lock lock(busy_);
    try {
      return work(db_);
    } catch (const SqliteFailure& failure) {
      return tl::unexpected(failure.error);
    }
  }

 private:
  template <class Work>
  auto in_transaction(const char* begin, const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
    return alone([&](Sqlite& db) -> decltype(work(db)) {
      const Transaction transaction(db, begin);
      auto done = work(db);
      if (done) db.run("COMMIT");
      return done;
    });
  }

  /// Leaves nothing of a transaction that was not committed.
  class Transaction {
   public:
    Transaction(Sqlite& db, const char* begin) : db_(db) { db_.run(begin); }
    ~Transaction() { db_.roll_back(); }
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

   private:
    Sqlite& db_;
  };

  std::mutex busy_;
  Sqlite db_;
};

/// Adds a line to the audit trail.
void leave_trail(Sqlite& db, const domain::Stamp& by, const std::string& what);

/// A time as it stands in the file.
std::int64_t seconds_of(std::chrono::sys_seconds when);
std::chrono::sys_seconds instant_of(const SqlValue& seconds);

}  // namespace repwright::store
