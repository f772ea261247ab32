#include "api/hindsight_json.hpp"

#include <nlohmann/json.hpp>

namespace repwright::api {
namespace {

using Json = nlohmann::ordered_json;

Json row_json(const app::HindsightRow& row) {
  Json out = {{"of", row.of},
              {"scores", row.scores},
              {"bias", row.bias},
              {"median_error", row.median_error},
              {"held", row.held}};
  if (row.compared > 0)
    out["again"] = {{"scores", row.compared},
                    {"forecast_error", row.forecast_error},
                    {"last_score_error", row.last_error},
                    {"group_error", row.group_error}};
  return out;
}

Json rows_json(const std::vector<app::HindsightRow>& rows) {
  Json out = Json::array();
  for (const app::HindsightRow& row : rows) out.push_back(row_json(row));
  return out;
}

}  // namespace

std::string hindsight_json(const app::Hindsight& hindsight) {
  const Json out = {{"all", row_json(hindsight.all)},
                    {"by_count", rows_json(hindsight.by_count)},
                    {"by_board", rows_json(hindsight.by_board)},
                    {"by_person", rows_json(hindsight.by_person)}};
  return out.dump(1) + "\n";
}

}  // namespace repwright::api
