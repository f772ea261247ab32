#include "api/forecast_json.hpp"

#include <nlohmann/json.hpp>

#include "api/item_json.hpp"
#include "domain/rehearsal_names.hpp"

namespace repwright::api {

nlohmann::ordered_json forecast_json(const domain::PieceOutcome& piece) {
  return {{"measure", domain::name_of(piece.measure)},
          {"p10", number_json(piece.score.p10)},
          {"p50", number_json(piece.score.p50)},
          {"p90", number_json(piece.score.p90)},
          {"reps_per_round", number_json(piece.reps_per_round)}};
}

}  // namespace repwright::api
