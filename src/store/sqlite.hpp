#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <initializer_list>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/result.hpp"

struct sqlite3;
struct sqlite3_stmt;

/// SQLite as this layer uses it: no other file knows its interface.
namespace repwright::store {

/// Thrown inside this layer alone; whoever offers a port turns it into a `Result`.
struct SqliteFailure {
  base::Error error;
};

using SqlValue = std::variant<std::monostate, std::int64_t, double, std::string>;
using SqlRow = std::vector<SqlValue>;

enum class SqliteAccess : std::uint8_t { Read, Write, WriteOrMake };

struct SqliteOptions {
  SqliteAccess access = SqliteAccess::Write;
  std::chrono::milliseconds patience{5000};  // how long to wait for another program's write
  std::optional<int> most_pages;             // the file may not grow beyond; nothing: as far as the disk goes
};

/// One connection. Not for two threads at once.
class Sqlite {
 public:
  /// Throws SqliteFailure: NotFound if it is not there and not to be made, ReadOnly, NotADatabase, Locked.
  Sqlite(const std::filesystem::path& path, const SqliteOptions& options);

  /// Statements without values or rows.
  void run(const std::string& sql);
  /// One statement with its values for `?1`, `?2` ... Returns the rows that it gives.
  std::vector<SqlRow> rows(const std::string& sql, std::initializer_list<SqlValue> values = {});
  /// The one number that the statement gives.
  std::int64_t number(const std::string& sql, std::initializer_list<SqlValue> values = {});
  /// The number of the row that was added last.
  std::int64_t last_number() const;
  /// Ends a transaction that is still open, as if it had not been; throws nothing.
  void roll_back() noexcept;
  /// Everything in this database, in place of what is in `to`, as one transaction.
  void copy_into(Sqlite& to);

  const std::filesystem::path& path() const { return path_; }
  /// An error of that kind, with the file's name in front.
  SqliteFailure failure(base::ErrorCode code, const std::string& words) const;

 private:
  using Prepared = std::unique_ptr<sqlite3_stmt, void (*)(sqlite3_stmt*)>;

  void check(int code) const;
  sqlite3_stmt* prepared(const std::string& sql);

  std::filesystem::path path_;
  std::unique_ptr<sqlite3, void (*)(sqlite3*)> handle_;
  std::map<std::string, Prepared, std::less<>> prepared_;  // by their words; they end before the handle
};

std::int64_t number_in(const SqlValue& value);
std::optional<double> real_in(const SqlValue& value);
/// Empty for NULL.
std::string text_in(const SqlValue& value);

/// NULL for an empty text.
SqlValue text_or_null(const std::string& text);
SqlValue real_or_null(const std::optional<double>& real);

}  // namespace repwright::store
