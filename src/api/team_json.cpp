#include "api/team_json.hpp"

#include <nlohmann/json.hpp>

namespace repwright::api {

using Json = nlohmann::ordered_json;

std::string team_json(const domain::TeamPlan& plan) {
  Json json = {{"piece", plan.piece},       {"size", plan.size},
               {"spread_s", plan.spread_s}, {"spread_as_they_stand_s", plan.spread_as_they_stand_s},
               {"teams", Json::array()},    {"notes", plan.notes}};
  for (const domain::WorkTeam& team : plan.teams) {
    Json people = Json::array();
    for (std::size_t p = 0; p < team.people.size(); ++p)
      people.push_back({{"id", team.people[p].text}, {"name", team.names[p]}});
    json["teams"].push_back(
        {{"people", std::move(people)}, {"expected_s", team.seconds}, {"factor", team.factor}});
  }
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
