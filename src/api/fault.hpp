#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "api/http.hpp"
#include "base/result.hpp"

namespace repwright::api {

/// Why a request was refused: the HTTP status, the reason in words, and where in the input it lies.
struct Fault {
  int status = 400;
  std::string text;
  std::optional<int> line = std::nullopt;    // of the board's text
  std::optional<int> column = std::nullopt;  // of the board's text
  std::string field = {};                    // of the request's body
};

using Answer = tl::expected<Response, Fault>;

/// The one table from what went wrong to the status of HTTP (RFC 9110 section 15, RFC 4918 section 11.5).
int status_of(base::ErrorCode code);

tl::unexpected<Fault> refuse(int status, std::string text);
tl::unexpected<Fault> refuse_field(std::string field, std::string text);
tl::unexpected<Fault> refuse(const base::Error& error);

/// `{"error": {"text", "line"?, "column"?, "field"?}}`
Response response_of(const Fault& fault);

/// 403: there or not, it is not for this role.
tl::unexpected<Fault> not_yours();
/// 404: `what` of that id is not there.
tl::unexpected<Fault> nothing_called(std::string_view what, const std::string& id);

}  // namespace repwright::api
