#include "store/sqlite_file.hpp"

namespace repwright::store {

void leave_trail(Sqlite& db, const domain::Stamp& by, const std::string& what) {
  db.rows("INSERT INTO trail (who, at, what) VALUES (?1, ?2, ?3)", {by.who, seconds_of(by.when), what});
}

std::int64_t seconds_of(std::chrono::sys_seconds when) {
  return when.time_since_epoch().count();
}

std::chrono::sys_seconds instant_of(const SqlValue& seconds) {
  return std::chrono::sys_seconds(std::chrono::seconds(number_in(seconds)));
}

}  // namespace repwright::store
