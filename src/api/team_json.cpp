#include "api/team_json.hpp"

#include <nlohmann/json.hpp>

#include "domain/rehearsal_names.hpp"

namespace repwright::api {

using Json = nlohmann::ordered_json;

std::string team_json(const domain::TeamPlan& plan) {
  Json json = {{"piece", plan.piece},    {"measure", domain::name_of(plan.measure)},
               {"size", plan.size},      {"rehearsed", plan.rehearsed},
               {"spread", plan.spread},  {"spread_as_they_stand", plan.spread_as_they_stand},
               {"teams", Json::array()}, {"notes", plan.notes}};
  for (const domain::WorkTeam& team : plan.teams) {
    Json people = Json::array();
    for (std::size_t p = 0; p < team.people.size(); ++p)
      people.push_back({{"id", team.people[p].text}, {"name", team.names[p]}});
    json["teams"].push_back(
        {{"people", std::move(people)}, {"expected", team.expected}, {"factor", team.factor}});
  }
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
