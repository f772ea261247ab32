#pragma once

#include <string>

#include "app/hindsight.hpp"

namespace repwright::api {

/// {"all": row, "by_count": [row], "by_board": [row], "by_person": [row]}; a row has "of", "scores", "bias",
/// "median_error", "held" and, where a piece was done before, "again": {"scores", "forecast_error",
/// "last_score_error", "group_error"}. Shares, not per cent. Ends with a line feed.
std::string hindsight_json(const app::Hindsight& hindsight);

}  // namespace repwright::api
