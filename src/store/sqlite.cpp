#include "store/sqlite.hpp"

#include <sqlite3.h>

#include <cerrno>
#include <system_error>

#include "base/overloaded.hpp"
#include "base/require.hpp"

namespace repwright::store {
namespace {

using base::ErrorCode;

/// What a result code of SQLite means to whoever runs the program.
base::Error error_of(int code, int system_error, const char* words) {
  switch (code & 0xFF) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {ErrorCode::Locked, "the database is locked by another program; end that, or try again"};
    case SQLITE_FULL:
      return {ErrorCode::Full, "there is no room left on the disk"};
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return {ErrorCode::ReadOnly, "may be read but not written"};
    case SQLITE_NOTADB:
      return {ErrorCode::NotADatabase, "is not a database of this program"};
    case SQLITE_CORRUPT:
      return {ErrorCode::NotADatabase, "is damaged; `repwright restore` brings a backup back"};
    case SQLITE_IOERR:
      if (system_error == ENOSPC || system_error == EDQUOT)
        return {ErrorCode::Full, "there is no room left on the disk"};
      break;
    default:
      break;
  }
  if (system_error == EACCES || system_error == EROFS)
    return {ErrorCode::ReadOnly, "may not be opened or written by this user"};
  return {ErrorCode::Unavailable, words};
}

int flags_of(SqliteAccess access) {
  if (access == SqliteAccess::Read) return SQLITE_OPEN_READONLY;
  return access == SqliteAccess::Write ? SQLITE_OPEN_READWRITE : SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
}

void close(sqlite3* handle) {
  sqlite3_close_v2(handle);
}

void finish(sqlite3_stmt* statement) {
  sqlite3_finalize(statement);
}

/// One run of a prepared statement, which is left as new: it holds no lock and remembers no value.
class Statement {
 public:
  explicit Statement(sqlite3_stmt* prepared) : statement_(prepared) {}
  ~Statement() {
    sqlite3_reset(statement_);
    sqlite3_clear_bindings(statement_);
  }
  Statement(const Statement&) = delete;
  Statement& operator=(const Statement&) = delete;

  int code() const { return code_; }
  void bind(int at, const SqlValue& value) {
    code_ = std::visit(
        base::Overloaded{[&](std::monostate) { return sqlite3_bind_null(statement_, at); },
                         [&](std::int64_t number) { return sqlite3_bind_int64(statement_, at, number); },
                         [&](double real) { return sqlite3_bind_double(statement_, at, real); },
                         [&](const std::string& text) {
                           return sqlite3_bind_text64(statement_, at, text.data(), text.size(),
                                                      SQLITE_TRANSIENT, SQLITE_UTF8);
                         }},
        value);
  }
  /// Whether there is one more row.
  bool step() {
    code_ = sqlite3_step(statement_);
    const bool row = code_ == SQLITE_ROW;
    if (row || code_ == SQLITE_DONE) code_ = SQLITE_OK;
    return row;
  }
  SqlRow row() const {
    SqlRow out;
    const int columns = sqlite3_column_count(statement_);
    for (int i = 0; i < columns; ++i) out.push_back(value(i));
    return out;
  }

 private:
  SqlValue value(int column) const {
    switch (sqlite3_column_type(statement_, column)) {
      case SQLITE_INTEGER:
        return std::int64_t{sqlite3_column_int64(statement_, column)};
      case SQLITE_FLOAT:
        return sqlite3_column_double(statement_, column);
      case SQLITE_NULL:
        return std::monostate();
      default:
        break;
    }
    const void* bytes = sqlite3_column_blob(statement_, column);
    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement_, column));
    return size == 0 ? std::string() : std::string(static_cast<const char*>(bytes), size);
  }

  sqlite3_stmt* statement_ = nullptr;
  int code_ = SQLITE_OK;
};

}  // namespace

Sqlite::Sqlite(const std::filesystem::path& path, const SqliteOptions& options)
    : path_(path), handle_(nullptr, close) {
  std::error_code error;
  if (options.access != SqliteAccess::WriteOrMake && !std::filesystem::exists(path, error))
    throw failure(ErrorCode::NotFound, "there is no such file");
  sqlite3* handle = nullptr;
  const int code = sqlite3_open_v2(path.c_str(), &handle, flags_of(options.access), nullptr);
  handle_.reset(handle);
  check(code);
  sqlite3_extended_result_codes(handle, 1);
  check(sqlite3_busy_timeout(handle, static_cast<int>(options.patience.count())));
  if (options.access != SqliteAccess::Read && sqlite3_db_readonly(handle, "main") == 1)
    throw failure(ErrorCode::ReadOnly, "may be read but not written");
  if (options.most_pages) rows("PRAGMA max_page_count = " + std::to_string(*options.most_pages));
}

SqliteFailure Sqlite::failure(ErrorCode code, const std::string& words) const {
  return {{code, path_.string() + ": " + words}};
}

void Sqlite::check(int code) const {
  if (code == SQLITE_OK) return;
  const base::Error error =
      error_of(code, sqlite3_system_errno(handle_.get()), sqlite3_errmsg(handle_.get()));
  throw failure(error.code, error.message);
}

void Sqlite::run(const std::string& sql) {
  check(sqlite3_exec(handle_.get(), sql.c_str(), nullptr, nullptr, nullptr));
}

sqlite3_stmt* Sqlite::prepared(const std::string& sql) {
  if (const auto known = prepared_.find(sql); known != prepared_.end()) return known->second.get();
  sqlite3_stmt* statement = nullptr;
  check(sqlite3_prepare_v3(handle_.get(), sql.c_str(), -1, SQLITE_PREPARE_PERSISTENT, &statement, nullptr));
  return prepared_.emplace(sql, Prepared(statement, finish)).first->second.get();
}

std::vector<SqlRow> Sqlite::rows(const std::string& sql, std::initializer_list<SqlValue> values) {
  Statement statement(prepared(sql));
  int at = 0;
  for (const SqlValue& value : values) {
    statement.bind(++at, value);
    check(statement.code());
  }
  std::vector<SqlRow> out;
  while (statement.step()) out.push_back(statement.row());
  check(statement.code());
  return out;
}

std::int64_t Sqlite::number(const std::string& sql, std::initializer_list<SqlValue> values) {
  const auto found = rows(sql, values);
  base::require(found.size() == 1 && found[0].size() == 1, "the statement gives one value");
  return number_in(found[0][0]);
}

std::int64_t Sqlite::last_number() const {
  return sqlite3_last_insert_rowid(handle_.get());
}

void Sqlite::roll_back() noexcept {
  if (sqlite3_get_autocommit(handle_.get()) == 0)
    sqlite3_exec(handle_.get(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void Sqlite::copy_into(Sqlite& to) {
  const std::unique_ptr<sqlite3_backup, int (*)(sqlite3_backup*)> copy(
      sqlite3_backup_init(to.handle_.get(), "main", handle_.get(), "main"), sqlite3_backup_finish);
  if (!copy) to.check(sqlite3_errcode(to.handle_.get()));
  const int code = sqlite3_backup_step(copy.get(), -1);
  if (code != SQLITE_DONE) to.check(code);
}

std::int64_t number_in(const SqlValue& value) {
  const auto* number = std::get_if<std::int64_t>(&value);
  return number == nullptr ? 0 : *number;
}

std::optional<double> real_in(const SqlValue& value) {
  if (const auto* real = std::get_if<double>(&value)) return *real;
  if (const auto* number = std::get_if<std::int64_t>(&value)) return static_cast<double>(*number);
  return std::nullopt;
}

std::string text_in(const SqlValue& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string() : *text;
}

SqlValue text_or_null(const std::string& text) {
  if (text.empty()) return std::monostate();
  return text;
}

SqlValue real_or_null(const std::optional<double>& real) {
  if (!real) return std::monostate();
  return *real;
}

}  // namespace repwright::store
