#pragma once

#include "api/route_table.hpp"

namespace repwright::api {

/// Small changes of the board that would help this class most; asked as `post_rehearse` is, changes nothing.
Answer post_repairs(const Call& call);

}  // namespace repwright::api
