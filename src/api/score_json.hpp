#pragma once

#include <nlohmann/json_fwd.hpp>

#include "domain/kept.hpp"

namespace repwright::api {

/// `{"number", "version", "person", "piece", "score", "done_as", "effort", "flag", "entered_by", "saved_by",
/// "saved_at"}`
nlohmann::ordered_json score_json(const domain::KeptScore& kept);

}  // namespace repwright::api
