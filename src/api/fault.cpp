#include "api/fault.hpp"

#include <nlohmann/json.hpp>
#include <utility>

#include "api/json_response.hpp"

namespace repwright::api {

int status_of(base::ErrorCode code) {
  switch (code) {
    case base::ErrorCode::NotFound:
      return 404;
    case base::ErrorCode::Invalid:
    case base::ErrorCode::Infeasible:
      return 400;
    case base::ErrorCode::Conflict:
      return 409;
    case base::ErrorCode::Unavailable:
    case base::ErrorCode::Stopped:
    case base::ErrorCode::Locked:
    case base::ErrorCode::ReadOnly:
      return 503;
    case base::ErrorCode::Full:
      return 507;
    case base::ErrorCode::NotKept:
      return 501;
    case base::ErrorCode::NotADatabase:
    case base::ErrorCode::NewerSchema:
      return 500;
  }
  return 500;
}

tl::unexpected<Fault> refuse(int status, std::string text) {
  return tl::unexpected<Fault>(Fault{.status = status, .text = std::move(text)});
}

tl::unexpected<Fault> refuse_field(std::string field, std::string text) {
  return tl::unexpected<Fault>(Fault{.status = 400, .text = std::move(text), .field = std::move(field)});
}

tl::unexpected<Fault> refuse(const base::Error& error) {
  return refuse(status_of(error.code), error.message);
}

Response response_of(const Fault& fault) {
  nlohmann::ordered_json error{{"text", fault.text}};
  if (fault.line) error["line"] = *fault.line;
  if (fault.column) error["column"] = *fault.column;
  if (!fault.field.empty()) error["field"] = fault.field;
  return json_response({{"error", std::move(error)}}, fault.status);
}

tl::unexpected<Fault> not_yours() {
  return refuse(403, "this is not for you to see");
}

tl::unexpected<Fault> nothing_called(std::string_view what, const std::string& id) {
  return refuse(404, "no " + std::string(what) + " is called `" + id + "`");
}

}  // namespace repwright::api
