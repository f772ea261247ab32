#include "api/json_response.hpp"

#include <nlohmann/json.hpp>

namespace repwright::api {

Response json_response(const nlohmann::ordered_json& json, int status) {
  return {.status = status,
          .body = json.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n"};
}

}  // namespace repwright::api
