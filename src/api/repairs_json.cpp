#include "api/repairs_json.hpp"

#include <nlohmann/json.hpp>
#include <string_view>

#include "api/targets_json.hpp"

namespace repwright::api {
namespace {

using Json = nlohmann::ordered_json;

std::string_view name_of(domain::RepairKind kind) {
  using enum domain::RepairKind;
  switch (kind) {
    case OddStart:
      return "odd-start";
    case Swap:
      return "swap";
    case Stagger:
      return "start-in-turn";
    case SecondStation:
      return "second-station";
    case FewerReps:
      return "fewer-reps";
    case ShorterRun:
      return "shorter-run";
    case FewerRounds:
      return "fewer-rounds";
    case MoreRounds:
      return "more-rounds";
    case LessOfEach:
      return "less-of-each";
    case LongerInterval:
      return "longer-interval";
    case Cap:
      return "cap";
    case CutList:
      return "cut-list";
    case Heats:
      return "heats";
  }
  return "";
}

Json consequences_json(const domain::Consequences& told) {
  Json json = {{"wait_s", told.wait_s},
               {"finished_share", told.finished},
               {"over_share", told.over_share},
               {"end_p50_s", told.end_p50_s},
               {"end_p90_s", told.end_p90_s},
               {"over_s", told.over_s},
               {"median_finish_s", told.median_finish_s},
               {"work_s", told.work_s}};
  json["off_intent_share"] = told.off_intent ? Json(*told.off_intent) : Json(nullptr);
  return json;
}

}  // namespace

std::string repairs_json(const domain::RepairPlan& plan) {
  Json json = {{"notes", plan.notes},
               {"tried", plan.tried},
               {"runs", plan.runs},
               {"stopped", plan.stopped},
               {"before", consequences_json(plan.before)},
               {"repairs", Json::array()}};
  for (const domain::Repair& repair : plan.best)
    json["repairs"].push_back({{"kind", name_of(repair.edit.kind)},
                               {"words", repair.edit.words},
                               {"lines", repair.edit.lines},
                               {"rewritten", repair.edit.rewritten},
                               {"text", repair.edit.text},
                               {"change", repair.edit.change},
                               {"gain_min", repair.gain},
                               {"after", consequences_json(repair.after)}});
  json["targets"] = targets_json(plan.targets);
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
