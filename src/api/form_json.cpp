#include "api/form_json.hpp"

#include <array>
#include <nlohmann/json.hpp>

#include "api/forecast_json.hpp"
#include "api/item_json.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

constexpr std::array<std::string_view, 6> forms{"time", "rounds", "reps", "load", "distance", "kcal"};

}  // namespace

std::string_view name_of(app::ScoreForm form) {
  return forms[static_cast<std::size_t>(form)];
}

ordered_json form_person_json(const app::FormPerson& person) {
  ordered_json json{{"id", person.person.text},
                    {"name", person.name},
                    {"done_as", person.done_as},
                    {"said_as", person.said_as},
                    {"with", ordered_json::array()},
                    {"forecast", forecast_json(person.forecast)},
                    {"least", number_json(person.least)},
                    {"most", number_json(person.most)},
                    {"holds", nullptr},
                    {"capped", number_json(person.forecast.capped)},
                    {"reps_at_cap", nullptr},
                    {"loads", ordered_json::array()},
                    {"load_step", nullptr}};
  if (person.holds) json["holds"] = number_json(*person.holds);
  if (const auto& reps = person.forecast.reps_at_cap) json["reps_at_cap"] = number_json(reps->p50);
  for (const double load : person.loads.lots) json["loads"].push_back(number_json(load));
  if (person.loads.step) json["load_step"] = number_json(*person.loads.step);
  for (const domain::PersonId& other : person.with) json["with"].push_back(other.text);
  return json;
}

}  // namespace repwright::api
