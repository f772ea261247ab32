#include "api/warm_up_json.hpp"

#include <nlohmann/json.hpp>
#include <string_view>

namespace repwright::api {
namespace {

using domain::NeedKind;
using domain::WarmUp;
using domain::WarmUpPlan;
using Json = nlohmann::ordered_json;

std::string_view name_of(NeedKind kind) {
  switch (kind) {
    case NeedKind::Joint:
      return "joint";
    case NeedKind::Pattern:
      return "pattern";
    case NeedKind::Muscle:
      return "muscle";
  }
  return "";
}

Json step_json(const domain::WarmUpStep& step) {
  Json json = {{"drill", step.drill},         {"name", step.name},         {"phase", step.phase},
               {"seconds", step.length.si()}, {"how", step.how},           {"say", step.say},
               {"on_floor", step.on_floor},   {"prepares", step.prepares}, {"instead", Json::array()}};
  for (const domain::OtherDrill& other : step.others)
    json["instead"].push_back({{"person", other.person}, {"action", other.action}, {"drill", other.drill}});
  return json;
}

Json warm_up_of(const WarmUp& warm_up) {
  Json json = {{"asked_s", warm_up.asked.si()},
               {"planned_s", warm_up.planned.si()},
               {"prepared_share", warm_up.prepared_share},
               {"floor_visits", warm_up.floor_visits},
               {"proven", warm_up.proven},
               {"unprepared", warm_up.unprepared},
               {"drills", Json::array()}};
  for (const domain::WarmUpStep& step : warm_up.steps) json["drills"].push_back(step_json(step));
  return json;
}

}  // namespace

std::string warm_up_json(const WarmUpPlan& plan) {
  Json json = {{"notes", plan.notes}, {"needs", Json::array()}};
  for (const domain::WarmUpNeed& need : plan.needs)
    json["needs"].push_back({{"kind", name_of(need.kind)},
                             {"id", need.id},
                             {"name", need.name},
                             {"weight", need.weight},
                             {"because", need.because}});
  json["together"] = warm_up_of(plan.together);
  json["late"] = warm_up_of(plan.late);
  json["away"] = warm_up_of(plan.away);
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
