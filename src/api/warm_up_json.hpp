#pragma once

#include <string>

#include "domain/warm_up_plan.hpp"

namespace repwright::api {

/// A warm-up as one JSON document by docs/warm-up.schema.json.
std::string warm_up_json(const domain::WarmUpPlan& plan);

}  // namespace repwright::api
