#include "api/emergency_routes.hpp"

#include <nlohmann/json.hpp>

#include "api/json_response.hpp"
#include "api/request_body.hpp"

namespace repwright::api {
namespace {

constexpr std::size_t longest_card = 4'000;

}  // namespace

Answer get_emergency(const Call& call) {
  const auto card = call.services.store.paper(domain::Paper::EmergencyCard);
  if (!card) return refuse(card.error());
  return json_response({{"version", std::to_string(card->saved.version)}, {"text", card->text}});
}

Answer put_emergency(const Call& call) {
  RequestBody body(call.request.body);
  const std::string seen = body.text("version", longest_name).value_or("0");
  const std::string text = body.text("text", longest_card).value_or("");
  if (!body.has("text")) return refuse_field("text", "`text` is missing");
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  store::Store& store = call.services.store;
  const auto card = store.paper(domain::Paper::EmergencyCard);
  if (!card) return refuse(card.error());
  if (std::to_string(card->saved.version) != seen)
    return refuse(409, "the emergency card was changed meanwhile: look at it again");
  const auto saved = store.save_paper(domain::Paper::EmergencyCard, text, call.seen(card->saved));
  if (!saved) return refuse(saved.error());
  Response response = json_response({{"version", std::to_string(saved->version)}});
  response.changed = {Topic::House};
  return response;
}

}  // namespace repwright::api
