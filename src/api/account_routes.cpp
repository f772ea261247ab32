#include "api/account_routes.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/json_response.hpp"
#include "api/number_id.hpp"
#include "api/request_body.hpp"
#include "base/civil_date.hpp"
#include "domain/people_search.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

constexpr int lines_of_a_page = 50;

/// The body of a change of an account as it is; the name alone.
tl::expected<std::string, Fault> only_name(const Request& request) {
  RequestBody body(request.body);
  std::string name = body.needed_text("name", longest_name);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  return name;
}

Answer done_with(const std::string& name, const base::Result<void>& done) {
  return done ? Answer(json_response({{"name", name}})) : refuse(done.error());
}

/// The owner changes every account, a coach those of screens.
bool may_change(const Call& call, Role role) {
  return call.who().role == Role::Owner || role == Role::Screen;
}

/// Why who asks may not change what is called so, if it is there.
std::optional<Fault> not_theirs(const Call& call, const std::string& name) {
  const auto all = call.services.gate.accounts();
  if (!all) return refuse(all.error()).value();
  for (const Caller& account : *all)
    if (account.name == name && !may_change(call, account.role)) return not_yours().value();
  return std::nullopt;
}

/// The secret that such an account signs in with; empty where its link is enough.
std::string secret_in(RequestBody& body, std::optional<Role> role) {
  if (!role)
    return body.text("password", longest_secret).value_or(body.text("pin", longest_secret).value_or(""));
  if (role == Role::Person) return body.needed_text("pin", longest_secret);
  if (role == Role::Screen || role == Role::Relief) return body.text("password", longest_secret).value_or("");
  return body.needed_text("password", longest_secret);
}

Answer trail_page(const Call& call, std::optional<std::int64_t> before) {
  auto lines = call.services.store.trail({.most = lines_of_a_page + 1, .before = before});
  if (!lines) return refuse(lines.error());
  ordered_json json{{"lines", ordered_json::array()}, {"next", nullptr}};
  if (lines->size() > lines_of_a_page) {
    lines->resize(lines_of_a_page);
    json["next"] = lines->back().number;
  }
  for (const domain::TrailLine& line : *lines)
    json["lines"].push_back({{"number", line.number},
                             {"who", line.by.who},
                             {"at", base::format_instant(line.by.when)},
                             {"what", line.what}});
  return json_response(json);
}

/// What of the account does not fit its role or the gym.
std::optional<Fault> misfit(const Caller& account, const app::OpenGym& gym) {
  const auto wrong = [](const char* field, std::string text) {
    return Fault{.status = 400, .text = std::move(text), .field = field};
  };
  if ((account.role == Role::Relief) != !account.class_id.empty())
    return wrong("class", "a relief coach, and nobody else, has a class");
  if (account.role == Role::Relief && !gym.classes.contains(account.class_id))
    return wrong("class", "no class is called `" + account.class_id + "`");
  if ((account.role == Role::Person) != !account.person.empty())
    return wrong("person", "an account of a person, and no other, names the person");
  if (account.role == Role::Person && domain::find_person(gym.people, account.person) == nullptr)
    return wrong("person", "no person is called `" + account.person.text + "`");
  return std::nullopt;
}

}  // namespace

ordered_json account_json(const Caller& account) {
  ordered_json json{{"name", account.name}, {"role", name_of(account.role)}};
  if (!account.class_id.empty()) json["class"] = account.class_id;
  if (!account.person.empty()) json["person"] = account.person.text;
  return json;
}

Answer get_accounts(const Call& call) {
  const auto all = call.services.gate.accounts();
  if (!all) return refuse(all.error());
  ordered_json json = ordered_json::array();
  for (const Caller& account : *all)
    if (may_change(call, account.role)) json.push_back(account_json(account));
  return json_response(json);
}

Answer post_account(const Call& call) {
  RequestBody body(call.request.body);
  const std::string name = body.needed_text("name", longest_name);
  const auto role = role_of(body.needed_text("role", longest_name));
  const Caller account{.name = name,
                       .role = role.value_or(Role::Person),
                       .secret_hash = {},
                       .link_hash = {},
                       .class_id = body.text("class", longest_name).value_or(""),
                       .person = {body.text("person", longest_name).value_or("")}};
  const std::string secret = secret_in(body, role);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (!role) return refuse_field("role", "`role` is not owner, coach, relief, person or screen");
  if (!may_change(call, account.role)) return not_yours();
  if (const auto fault = not_theirs(call, name)) return tl::unexpected(*fault);
  if (const auto fault = misfit(account, *call.gym)) return tl::unexpected(*fault);
  const auto link = call.services.gate.keep(account, secret, call.who().name);
  if (!link) return refuse(link.error());
  ordered_json json = account_json(account);
  if (!link->empty()) json["link"] = *link;
  return json_response(json);
}

Answer post_account_sign_out(const Call& call) {
  const auto name = only_name(call.request);
  if (!name) return tl::unexpected(name.error());
  return done_with(*name, call.services.gate.sign_out(*name, call.who().name));
}

Answer post_account_remove(const Call& call) {
  const auto name = only_name(call.request);
  if (!name) return tl::unexpected(name.error());
  if (const auto fault = not_theirs(call, *name)) return tl::unexpected(*fault);
  return done_with(*name, call.services.gate.remove(*name, call.who().name));
}

Answer get_trail(const Call& call) {
  return trail_page(call, std::nullopt);
}

Answer get_trail_before(const Call& call) {
  const auto before = number_in(call.id);
  return before ? trail_page(call, before) : nothing_called("line", call.id);
}

}  // namespace repwright::api
