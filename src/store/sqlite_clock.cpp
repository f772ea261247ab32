// What was done to the clocks of classes.
#include "store/sqlite_store.hpp"

namespace repwright::store {
namespace {

using base::Result;
using domain::ClockAct;

std::vector<ClockAct> acts_of(Sqlite& db, const std::string& class_id) {
  std::vector<ClockAct> acts;
  for (const SqlRow& row :
       db.rows("SELECT deed, at_ms, cue, seconds, key, who FROM clock_act WHERE class = ?1 ORDER BY number",
               {class_id})) {
    const auto deed = domain::clock_deed_of(text_in(row[0]));
    if (!deed) throw db.failure(base::ErrorCode::NotADatabase, "has a clock with an act that nobody knows");
    acts.push_back({.deed = *deed,
                    .at_ms = number_in(row[1]),
                    .cue = text_in(row[2]),
                    .seconds = base::Duration::from_si(real_in(row[3]).value_or(0)),
                    .key = text_in(row[4]),
                    .who = text_in(row[5])});
  }
  return acts;
}

}  // namespace

Result<std::vector<ClockAct>> SqliteStore::clock_acts(const std::string& class_id) {
  return file_.read([&](Sqlite& db) -> Result<std::vector<ClockAct>> { return acts_of(db, class_id); });
}

Result<std::int64_t> SqliteStore::add_clock_act(const std::string& class_id, const ClockAct& act,
                                                std::int64_t seen) {
  return file_.write([&](Sqlite& db) -> Result<std::int64_t> {
    if (db.number("SELECT count(*) FROM class WHERE id = ?1", {class_id}) == 0)
      return base::failure(base::ErrorCode::NotFound, "no class is called '" + class_id + "'");
    const std::vector<ClockAct> acts = acts_of(db, class_id);
    const auto before = kept_before(acts, act, seen);
    if (!before) return tl::unexpected(before.error());
    if (const auto& version = *before; version) return *version;
    const auto number = static_cast<std::int64_t>(acts.size()) + 1;
    db.rows(
        "INSERT INTO clock_act (class, number, deed, at_ms, cue, seconds, key, who) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
        {class_id, number, std::string(domain::name_of(act.deed)), act.at_ms, act.cue, act.seconds.si(),
         act.key, act.who});
    leave_trail(db, stamp_of(act), clock_words(class_id, act));
    return number;
  });
}

}  // namespace repwright::store
