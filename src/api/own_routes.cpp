#include "api/own_routes.hpp"

#include <nlohmann/json.hpp>

#include "api/form_json.hpp"
#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "app/own_today.hpp"
#include "base/civil_date.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

ordered_json piece_json(const app::OwnPiece& piece) {
  ordered_json json{{"piece", piece.piece},        {"title", piece.title}, {"scheme", piece.scheme},
                    {"form", name_of(piece.form)}, {"cap_s", nullptr},     {"parts", piece.parts}};
  if (piece.cap) json["cap_s"] = seconds_json(*piece.cap);
  json.update(form_person_json(piece.own));
  json["heat"] = nullptr;
  if (piece.heats > 1) json["heat"] = piece.own.standing.heat + 1;
  json["heats"] = piece.heats;
  json["place"] = nullptr;
  if (piece.heats > 1 || piece.lanes) json["place"] = piece.own.standing.place + 1;
  json["lanes"] = piece.lanes;
  json["starts_s"] = seconds_json(piece.own.start);
  json["lines"] = piece.lines;
  json["starts_with"] = piece.starts_with;
  json["partners"] = piece.partners;
  return json;
}

}  // namespace

Answer get_own_today(const Call& call) {
  const domain::PersonId person{call.id};
  if (call.who().role == Role::Person && call.who().person != person) return not_yours();
  const auto own = app::own_today(*call.at_hand, person, call.services.gate.today(), call.stop);
  if (!own) return refuse(own.error());
  const std::optional<app::OwnToday>& found = *own;
  if (!found) return json_response({{"today", nullptr}});
  const app::OwnToday& today = *found;
  ordered_json json{{"class", today.class_id},        {"date", nullptr},          {"start", nullptr},
                    {"board", today.board_title},     {"text", today.board_text}, {"told", today.told},
                    {"pieces", ordered_json::array()}};
  if (today.date) json["date"] = base::format_date(*today.date);
  if (today.start_minute) json["start"] = base::format_time_of_day(*today.start_minute);
  for (const app::OwnPiece& piece : today.pieces) json["pieces"].push_back(piece_json(piece));
  return json_response({{"today", std::move(json)}});
}

}  // namespace repwright::api
