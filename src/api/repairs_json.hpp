#pragma once

#include <string>

#include "domain/repair.hpp"

namespace repwright::api {

/// What `repwright repairs --json` prints: docs/repairs.schema.json. Ends with a line feed.
std::string repairs_json(const domain::RepairPlan& plan);

}  // namespace repwright::api
