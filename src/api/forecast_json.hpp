#pragma once

#include <nlohmann/json_fwd.hpp>

#include "domain/rehearsal.hpp"

namespace repwright::api {

/// `{"measure", "p10", "p50", "p90", "reps_per_round"}`
nlohmann::ordered_json forecast_json(const domain::PieceOutcome& piece);

}  // namespace repwright::api
