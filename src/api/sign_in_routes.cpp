#include "api/sign_in_routes.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/cookies.hpp"
#include "api/json_response.hpp"
#include "api/request_body.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

constexpr std::size_t longest_name = 100;
constexpr std::size_t longest_secret = 200;

ordered_json account_json(const Caller& account) {
  ordered_json json{{"name", account.name}, {"role", name_of(account.role)}};
  if (!account.class_id.empty()) json["class"] = account.class_id;
  if (!account.person.empty()) json["person"] = account.person.text;
  return json;
}

/// Signed in, with the cookie that says so from now on; or the refusal.
Answer entered(const tl::expected<app::Ticket, app::Refusal>& outcome) {
  if (outcome) {
    Response response = json_response(account_json(outcome->account));
    response.headers.emplace_back("Set-Cookie",
                                  session_cookie(outcome->token, static_cast<int>(outcome->stays.count())));
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
  return entered(call.services.gate.enter_as_owner(token, name, password));
}

Answer post_sign_in(const Call& call) {
  RequestBody body(call.request.body);
  const auto link = body.text("link", longest_secret);
  const std::string name = link ? "" : body.needed_text("name", longest_name);
  const std::string secret = body.needed_text(link ? "pin" : "password", longest_secret);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  app::Gate& gate = call.services.gate;
  return entered(link ? gate.enter_by_link(*link, secret) : gate.enter(name, secret));
}

Answer post_sign_out(const Call& call) {
  const auto left = call.services.gate.leave(cookie_value(call.request.cookies, session_cookie_name));
  if (!left) return refuse(left.error());
  Response response = json_response({{"role", nullptr}});
  response.headers.emplace_back("Set-Cookie", session_cookie("", 0));
  return response;
}

Answer get_accounts(const Call& call) {
  const auto all = call.services.gate.accounts();
  if (!all) return refuse(all.error());
  ordered_json json = ordered_json::array();
  for (const Caller& account : *all) json.push_back(account_json(account));
  return json_response(json);
}

Answer post_account(const Call& call) {
  RequestBody body(call.request.body);
  const std::string name = body.needed_text("name", longest_name);
  const auto role = role_of(body.needed_text("role", longest_name));
  const std::string class_id = body.text("class", longest_name).value_or("");
  const domain::PersonId person{body.text("person", longest_name).value_or("")};
  const std::string secret = body.needed_text(role == Role::Person ? "pin" : "password", longest_secret);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (!role) return refuse_field("role", "`role` is not owner, coach, relief or person");
  if ((role == Role::Relief) != !class_id.empty())
    return refuse_field("class", "a relief coach, and nobody else, has a class");
  if (role == Role::Relief && !call.gym->classes.contains(class_id))
    return refuse_field("class", "no class is called `" + class_id + "`");
  if ((role == Role::Person) != !person.empty())
    return refuse_field("person", "an account of a person, and no other, names the person");
  if (role == Role::Person &&
      std::ranges::find(call.gym->people, person, &domain::Person::id) == call.gym->people.end())
    return refuse_field("person", "no person is called `" + person.text + "`");
  const auto link = call.services.gate.keep({.name = name,
                                             .role = *role,
                                             .secret_hash = {},
                                             .link_hash = {},
                                             .class_id = class_id,
                                             .person = person},
                                            secret);
  if (!link) return refuse(link.error());
  ordered_json json{{"name", name}, {"role", name_of(*role)}};
  if (!link->empty()) json["link"] = *link;
  return json_response(json);
}

Answer get_events(const Call&) {
  return Response{.stream = true};
}

}  // namespace repwright::api
