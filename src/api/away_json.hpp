#pragma once

#include <string>

#include "domain/away_plan.hpp"

namespace repwright::api {

/// The away version as one JSON document by docs/away.schema.json.
std::string away_json(const domain::AwayPlan& plan);

}  // namespace repwright::api
