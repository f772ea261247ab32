#include "api/targets_json.hpp"

#include <nlohmann/json.hpp>
#include <optional>

#include "domain/rehearsal_names.hpp"

namespace repwright::api {
namespace {

using Json = nlohmann::ordered_json;

Json or_null(const std::optional<double>& value) {
  return value ? Json(*value) : Json(nullptr);
}

Json cap_json(const domain::CapTarget& cap) {
  return {{"seconds", cap.seconds},
          {"home_share", cap.home},
          {"now_s", or_null(cap.now_s)},
          {"home_now_share", cap.home_now},
          {"text", cap.text.empty() ? Json(nullptr) : Json(cap.text)}};
}

}  // namespace

Json targets_json(const std::vector<domain::PieceTarget>& targets) {
  Json all = Json::array();
  for (const domain::PieceTarget& target : targets) {
    Json levels = Json::array();
    for (const domain::LevelTarget& level : target.levels)
      levels.push_back({{"name", level.name},
                        {"people", level.people},
                        {"from", level.from},
                        {"to", level.to},
                        {"first_round_s", or_null(level.first_round_s)}});
    all.push_back({{"piece", target.piece},
                   {"name", target.name},
                   {"measure", domain::name_of(target.measure)},
                   {"in_rounds", target.in_rounds},
                   {"cap", target.cap ? cap_json(*target.cap) : Json(nullptr)},
                   {"levels", std::move(levels)}});
  }
  return all;
}

}  // namespace repwright::api
