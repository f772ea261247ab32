#include "api/brief_routes.hpp"

#include <nlohmann/json.hpp>

#include "api/forecast_json.hpp"
#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "api/people_json.hpp"
#include "api/relief.hpp"
#include "app/class_brief.hpp"
#include "app/past_scores.hpp"
#include "base/civil_date.hpp"
#include "store/scores_csv.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

/// A page of history: more is a table for another day.
constexpr std::size_t most_scores = 30;

std::string_view name_of(app::Standing standing) {
  switch (standing) {
    case app::Standing::Unknown:
      return "unknown";
    case app::Standing::First:
      return "first";
    case app::Standing::Back:
      return "back";
    case app::Standing::Regular:
      return "regular";
  }
  return "";
}

ordered_json comer_json(const app::Comer& comer, std::chrono::year_month_day today) {
  ordered_json json = floor_json(comer.person, today);
  json["late_s"] = seconds_json(comer.late);
  json["standing"] = name_of(comer.standing);
  json["sessions"] = comer.sessions;
  json["last_came"] = nullptr;
  if (comer.last_came) json["last_came"] = base::format_date(*comer.last_came);
  json["marks"] = comer.person.marks.size();
  return json;
}

ordered_json set_out_json(const app::SetOut& lot) {
  ordered_json json{
      {"equipment", lot.equipment.text}, {"name", lot.name}, {"kg", nullptr}, {"height_cm", nullptr}};
  if (lot.mass) json["kg"] = number_json(*lot.mass / base::kilogram);
  if (lot.height) json["height_cm"] = number_json(*lot.height / base::metre * 100);
  json["needed"] = lot.needed;
  json["available"] = lot.available;
  return json;
}

ordered_json past_score_json(const app::PastScore& past) {
  const domain::ScoreEntry& entry = past.entry;
  ordered_json json{{"date", base::format_date(entry.date)},
                    {"board", entry.board_id},
                    {"title", past.title},
                    {"piece", entry.piece},
                    {"score", entry.text},
                    {"version", entry.version},
                    {"effort", nullptr},
                    {"flag", store::name_of(entry.flag)},
                    {"value", nullptr},
                    {"days", nullptr},
                    {"forecast", nullptr}};
  if (entry.effort) json["effort"] = number_json(*entry.effort);
  if (past.value) json["value"] = number_json(*past.value);
  if (past.days) json["days"] = {number_json(past.days->first), number_json(past.days->second)};
  if (past.forecast) json["forecast"] = forecast_json(*past.forecast);
  return json;
}

}  // namespace

Answer get_brief(const Call& call) {
  if (takes_another_class(call, call.id)) return not_yours();
  const auto brief = app::class_brief(*call.at_hand, call.id, call.stop);
  if (!brief) return refuse(brief.error());
  // Limits that end before the class are no longer said of it.
  const auto day = call.gym->classes.at(call.id).date.value_or(call.services.gate.today());
  ordered_json json{{"people", ordered_json::array()}, {"set_out", ordered_json::array()}};
  for (const app::Comer& comer : brief->people) json["people"].push_back(comer_json(comer, day));
  for (const app::SetOut& lot : brief->set_out) json["set_out"].push_back(set_out_json(lot));
  return json_response(json);
}

Answer get_person_scores(const Call& call) {
  const domain::PersonId id{call.id};
  if (call.who().role == Role::Person && call.who().person != id) return not_yours();
  ordered_json json = ordered_json::array();
  for (const app::PastScore& past : app::past_scores(*call.gym, id, most_scores, call.stop))
    json.push_back(past_score_json(past));
  return json_response(json);
}

}  // namespace repwright::api
