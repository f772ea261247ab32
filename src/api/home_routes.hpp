#pragma once

#include "api/route_table.hpp"

namespace repwright::api {

/// When people are expected home in the pieces of a class.
Answer get_home(const Call& call);

}  // namespace repwright::api
