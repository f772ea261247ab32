#include "api/person_record_json.hpp"

#include <array>
#include <nlohmann/json.hpp>

#include "api/item_json.hpp"
#include "api/people_json.hpp"
#include "api/score_json.hpp"
#include "base/civil_date.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

ordered_json date_json(const std::optional<std::chrono::year_month_day>& date) {
  return date ? ordered_json(base::format_date(*date)) : ordered_json(nullptr);
}

ordered_json classes_json(const app::PersonRecord& record) {
  ordered_json json = ordered_json::array();
  for (const app::ClassOfPerson& each : record.classes)
    json.push_back({{"class", each.id},
                    {"date", date_json(each.date)},
                    {"booked", each.booked},
                    {"walked_in", each.walked_in},
                    {"late_s", each.late ? seconds_json(*each.late) : ordered_json(nullptr)}});
  return json;
}

ordered_json scores_json(const app::PersonRecord& record) {
  ordered_json json = ordered_json::array();
  for (const auto& versions : record.scores) {
    const domain::ScoreEntry& now = versions.back().entry;
    ordered_json said = ordered_json::array();
    for (const domain::KeptScore& each : versions) said.push_back(score_json(each));
    json.push_back({{"date", base::format_date(now.date)},
                    {"class", now.class_id},
                    {"board", now.board_id},
                    {"versions", std::move(said)}});
  }
  return json;
}

ordered_json door_json(const app::PersonRecord& record) {
  constexpr std::array<std::string_view, 4> acts{"out", "in", "here", "not here"};  // in the order of DoorAct
  ordered_json json = ordered_json::array();
  for (const domain::KeptDoorLine& each : record.at_door)
    json.push_back({{"class", each.line.class_id},
                    {"act", acts[static_cast<std::size_t>(each.line.act)]},
                    {"at", base::format_instant(each.line.seen)}});
  return json;
}

ordered_json notes_json(const app::PersonRecord& record) {
  ordered_json json = ordered_json::array();
  for (const domain::KeptNote& each : record.notes)
    json.push_back({{"text", each.note.text},
                    {"until", date_json(each.note.until)},
                    {"by", each.by.who},
                    {"at", base::format_instant(each.by.when)}});
  return json;
}

}  // namespace

std::string person_record_json(const app::PersonRecord& record) {
  ordered_json json{{"person", person_json(record.person)}, {"classes", classes_json(record)},
                    {"scores", scores_json(record)},        {"efforts", ordered_json::array()},
                    {"at_door", door_json(record)},         {"in_rankings", record.in_rankings},
                    {"notes", notes_json(record)},          {"accounts", ordered_json::array()},
                    {"did", ordered_json::array()},         {"boards", record.boards}};
  for (const domain::ClassEffort& each : record.efforts)
    json["efforts"].push_back({{"class", each.class_id}, {"effort", number_json(each.effort)}});
  for (const domain::Account& each : record.accounts)
    json["accounts"].push_back({{"name", each.name}, {"role", name_of(each.role)}});
  for (const domain::TrailLine& each : record.trail)
    json["did"].push_back({{"at", base::format_instant(each.by.when)}, {"what", each.what}});
  return json.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
