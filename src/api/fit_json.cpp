#include "api/fit_json.hpp"

#include <nlohmann/json.hpp>
#include <string_view>

namespace repwright::api {
namespace {

using domain::FitMeasure;
using Json = nlohmann::ordered_json;

std::string_view name_of(FitMeasure measure) {
  switch (measure) {
    case FitMeasure::Seconds:
      return "seconds";
    case FitMeasure::Rounds:
      return "rounds";
    case FitMeasure::SpareSeconds:
      return "spare_seconds";
  }
  return "";
}

Json window_json(const std::optional<domain::FitWindow>& window) {
  if (!window) return nullptr;
  return {{"measure", name_of(window->measure)},
          {"min", window->min},
          {"max", window->max ? Json(*window->max) : Json(nullptr)}};
}

Json person_json(const domain::PersonFit& person) {
  return {{"id", person.person.text},
          {"name", person.name},
          {"does", person.does},
          {"expected", person.expected},
          {"expects", person.expects},
          {"inside_before", person.inside_before},
          {"inside_after", person.inside_after},
          {"easier", person.easier},
          {"harder", person.harder},
          {"clash", person.clash},
          {"question", person.question}};
}

}  // namespace

std::string fit_json(const domain::FitPlan& plan) {
  Json json = {{"pieces", Json::array()}, {"notes", plan.notes}};
  for (const domain::PieceFit& piece : plan.pieces) {
    Json people = Json::array();
    for (const domain::PersonFit& person : piece.people) people.push_back(person_json(person));
    json["pieces"].push_back({{"piece", piece.piece},
                              {"window", window_json(piece.window)},
                              {"intent", piece.intent},
                              {"inside_before", piece.inside_before},
                              {"inside_after", piece.inside_after},
                              {"short_of", piece.short_of},
                              {"people", std::move(people)}});
  }
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
