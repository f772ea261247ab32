#include "api/line_up_routes.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/class_of_call.hpp"
#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "app/score_form.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

/// Whether it matters in this piece where somebody stands.
bool has_places(const app::FormPiece& piece) {
  return piece.heats > 1 || piece.lanes ||
         std::ranges::any_of(piece.people, [](const app::FormPerson& person) {
           return person.start.si() > 0 || !person.with.empty();
         });
}

ordered_json person_json(const app::FormPerson& person) {
  ordered_json json{{"id", person.person.text},
                    {"name", person.name},
                    {"heat", person.standing.heat},
                    {"place", person.standing.place},
                    {"starts_s", seconds_json(person.start)},
                    {"with", ordered_json::array()}};
  for (const domain::PersonId& other : person.with) json["with"].push_back(other.text);
  return json;
}

}  // namespace

Answer get_line_up(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  const auto form = app::score_form(*call.at_hand, call.id, call.stop);
  if (!form) return refuse(form.error());
  ordered_json json{{"pieces", ordered_json::array()}};
  for (const app::FormPiece& piece : *form) {
    if (!has_places(piece)) continue;
    ordered_json one{{"piece", piece.index},
                     {"title", piece.title},
                     {"heats", piece.heats},
                     {"lanes", piece.lanes},
                     {"people", ordered_json::array()}};
    for (const app::FormPerson& person : piece.people) one["people"].push_back(person_json(person));
    json["pieces"].push_back(std::move(one));
  }
  return json_response(json);
}

}  // namespace repwright::api
