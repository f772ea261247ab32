#pragma once

#include <string>

#include "domain/team_plan.hpp"

namespace repwright::api {

/// Teams as one JSON document by docs/pairs.schema.json.
std::string team_json(const domain::TeamPlan& plan);

}  // namespace repwright::api
