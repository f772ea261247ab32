#include "api/score_json.hpp"

#include <nlohmann/json.hpp>

#include "api/item_json.hpp"
#include "base/civil_date.hpp"
#include "store/scores_csv.hpp"

namespace repwright::api {

using nlohmann::ordered_json;

ordered_json score_json(const domain::KeptScore& kept) {
  const domain::ScoreEntry& entry = kept.entry;
  ordered_json json{{"number", kept.number},
                    {"version", kept.saved.version},
                    {"person", entry.person.text},
                    {"piece", entry.piece},
                    {"score", entry.text},
                    {"done_as", entry.version},
                    {"effort", nullptr},
                    {"flag", store::name_of(entry.flag)},
                    {"entered_by", entry.entered_by},
                    {"saved_by", nullptr},
                    {"saved_at", nullptr}};
  if (entry.effort) json["effort"] = number_json(*entry.effort);
  if (kept.saved.by) {
    json["saved_by"] = kept.saved.by->who;
    json["saved_at"] = base::format_instant(kept.saved.by->when);
  }
  return json;
}

}  // namespace repwright::api
