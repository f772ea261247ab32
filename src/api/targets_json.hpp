#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vector>

#include "domain/target.hpp"

namespace repwright::api {

/// What to write beside each piece, as docs/repairs.schema.json says.
nlohmann::ordered_json targets_json(const std::vector<domain::PieceTarget>& targets);

}  // namespace repwright::api
