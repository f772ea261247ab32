#include "api/sign_in_routes.hpp"

#include <nlohmann/json.hpp>

#include "api/account_routes.hpp"
#include "api/cookies.hpp"
#include "api/json_response.hpp"
#include "api/request_body.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

/// Signed in, with the cookie that says so from now on; or the refusal.
Answer entered(const Request& request, const tl::expected<app::Ticket, app::Refusal>& outcome) {
  if (outcome) {
    Response response = json_response(account_json(outcome->account));
    response.headers.emplace_back(
        "Set-Cookie", session_cookie(request, outcome->token, static_cast<int>(outcome->stays.count())));
    return response;
  }
  const app::Refusal& refused = outcome.error();
  if (refused.rest > std::chrono::seconds::zero()) {
    Response response = response_of({.status = 429, .text = refused.error.message});
    response.headers.emplace_back("Retry-After", std::to_string(refused.rest.count()));
    return response;
  }
  return refused.wrong_secret ? refuse(401, refused.error.message) : refuse(refused.error);
}

}  // namespace

Answer get_me(const Call& call) {
  if (call.caller) return json_response(account_json(*call.caller));
  const auto first = call.services.gate.first_start();
  if (!first) return refuse(first.error());
  return json_response({{"role", nullptr}, {"first_start", *first}});
}

Answer post_owner(const Call& call) {
  RequestBody body(call.request.body);
  const std::string token = body.needed_text("token", longest_secret);
  const std::string name = body.text("name", longest_name).value_or("");
  const std::string password = body.text("password", longest_secret).value_or("");
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  return entered(call.request, call.services.gate.enter_as_owner(token, name, password));
}

Answer post_sign_in(const Call& call) {
  RequestBody body(call.request.body);
  const auto link = body.text("link", longest_secret);
  const std::string name = link ? "" : body.needed_text("name", longest_name);
  const std::string secret =
      link ? body.text("pin", longest_secret).value_or("") : body.needed_text("password", longest_secret);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  app::Gate& gate = call.services.gate;
  return entered(call.request, link ? gate.enter_by_link(*link, secret) : gate.enter(name, secret));
}

Answer post_sign_out(const Call& call) {
  const auto left = call.services.gate.leave(session_in(call.request));
  if (!left) return refuse(left.error());
  Response response = json_response({{"role", nullptr}});
  response.headers.emplace_back("Set-Cookie", session_cookie(call.request, "", 0));
  return response;
}

Answer get_events(const Call&) {
  return Response{.stream = true};
}

}  // namespace repwright::api
