#include "api/away_json.hpp"

#include <nlohmann/json.hpp>

namespace repwright::api {

using Json = nlohmann::ordered_json;

std::string away_json(const domain::AwayPlan& plan) {
  Json json = {{"text", plan.text},      {"here_s", plan.here_s},     {"away_s", plan.away_s},
               {"lines", Json::array()}, {"patterns", Json::array()}, {"notes", plan.notes}};
  for (const domain::AwayLine& line : plan.lines)
    json["lines"].push_back({{"written", line.written}, {"away", line.away}});
  for (const domain::PatternSeconds& sum : plan.patterns)
    json["patterns"].push_back({{"pattern", sum.pattern}, {"here_s", sum.here_s}, {"away_s", sum.away_s}});
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
