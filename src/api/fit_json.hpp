#pragma once

#include <string>

#include "domain/fit_plan.hpp"

namespace repwright::api {

/// Fits as one JSON document by docs/fit.schema.json.
std::string fit_json(const domain::FitPlan& plan);

}  // namespace repwright::api
