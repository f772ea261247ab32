#pragma once

#include <mutex>
#include <string>
#include <utility>

#include "domain/kept.hpp"
#include "store/sqlite.hpp"

namespace repwright::store {

/// A database file that several threads work in: one writes, one reads at a time, and nobody who reads waits
/// for the disk of who writes.
class SqliteFile {
 public:
  /// Two connections to the same file.
  SqliteFile(Sqlite writing, Sqlite reading) : writing_(std::move(writing)), reading_(std::move(reading)) {}

  /// Lets `work` read one state of the file, at least that of the last write that returned. What SQLite
  /// throws becomes the error.
  template <class Work>
  auto read(const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
    return reading_.in_transaction("BEGIN", work);
  }
  /// Lets `work` write; kept as a whole if it succeeds, else nothing of it.
  template <class Work>
  auto write(const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
    return writing_.in_transaction("BEGIN IMMEDIATE", work);
  }
  /// Work that cannot stand in a transaction, where nobody writes.
  template <class Work>
  auto alone(const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
    return writing_.alone(work);
  }

 private:
  /// Leaves nothing of a transaction that was not committed.
  class Transaction {
   public:
    Transaction(Sqlite& db, const char* begin) : db_(db) { db_.rows(begin); }
    ~Transaction() { db_.roll_back(); }
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

   private:
    Sqlite& db_;
  };

  /// A connection and the one who uses it now.
  class Connection {
   public:
    explicit Connection(Sqlite db) : db_(std::move(db)) {}

    template <class Work>
    auto alone(const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
      const std::scoped_lock lock(busy_);
      try {
        return work(db_);
      } catch (const SqliteFailure& failure) {
        return tl::unexpected(failure.error);
      }
    }
    template <class Work>
    auto in_transaction(const char* begin, const Work& work) -> decltype(work(std::declval<Sqlite&>())) {
      return alone([&](Sqlite& db) -> decltype(work(db)) {
        const Transaction transaction(db, begin);
        auto done = work(db);
        if (done) db.rows("COMMIT");
        return done;
      });
    }

   private:
    std::mutex busy_;
    Sqlite db_;
  };

  Connection writing_;
  Connection reading_;
};

/// Adds a line to the audit trail.
void leave_trail(Sqlite& db, const domain::Stamp& by, const std::string& what);

/// A time as it stands in the file.
std::int64_t seconds_of(std::chrono::sys_seconds when);
std::chrono::sys_seconds instant_of(const SqlValue& seconds);

}  // namespace repwright::store
