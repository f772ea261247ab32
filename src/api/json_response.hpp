#pragma once

#include <nlohmann/json_fwd.hpp>

#include "api/http.hpp"

namespace repwright::api {

/// The value as a whole answer, one line of UTF-8; bytes that are not UTF-8 become the replacement character.
Response json_response(const nlohmann::ordered_json& json, int status = 200);

}  // namespace repwright::api
