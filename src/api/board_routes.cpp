#include "api/board_routes.hpp"

#include <nlohmann/json.hpp>

#include "api/json_response.hpp"
#include "api/reading_json.hpp"
#include "api/rehearsal_json.hpp"
#include "api/request_body.hpp"
#include "api/what_if_question.hpp"
#include "board/tidy.hpp"
#include "board/words.hpp"
#include "timetable/length.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

/// The text of a body that has nothing else.
tl::expected<std::string, Fault> only_text(const Request& request) {
  RequestBody body(request.body);
  std::string text = body.text("text", longest_board).value_or("");
  if (!body.has("text")) return refuse_field("text", "`text` is missing");
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  return text;
}

}  // namespace

Answer post_read(const Call& call) {
  const auto text = only_text(call.request);
  if (!text) return tl::unexpected(text.error());
  const app::GymKnowledge& known = call.gym->knowledge;
  const board::Reading reading = call.at_hand->read(*text);
  return Response{
      .body = reading_json(reading, *text, board::in_words(reading.board, known.catalogue, known.house))};
}

Answer post_tidy(const Call& call) {
  const auto text = only_text(call.request);
  if (!text) return tl::unexpected(text.error());
  const app::GymKnowledge& known = call.gym->knowledge;
  const board::Reading reading = call.at_hand->read(*text);
  return json_response({{"text", board::tidy(reading.board, known.catalogue, known.house)}});
}

Answer post_rehearse(const Call& call) {
  const auto asked = what_if_question(call);
  if (!asked) return tl::unexpected(asked.error());
  const auto result = app::rehearse_what_if(*call.at_hand, asked->reading, asked->what);
  if (!result) return refuse(result.error());
  const domain::Board& board = asked->reading.board;
  return Response{.body = rehearsal_json(result->rehearsal, {board.title, timetable::fixed_length(board)})};
}

Answer get_movements(const Call& call) {
  ordered_json json = ordered_json::array();
  for (const domain::Movement& movement : call.gym->knowledge.catalogue.movements)
    json.push_back({{"id", movement.id.text},
                    {"name", movement.name},
                    {"aliases", movement.aliases},
                    {"category", movement.category},
                    {"patterns", movement.patterns}});
  return json_response(json);
}

Answer get_equipment(const Call& call) {
  ordered_json json = ordered_json::array();
  for (const domain::Equipment& each : call.gym->knowledge.catalogue.equipment)
    json.push_back({{"id", each.id.text}, {"name", each.name}, {"kind", each.kind}});
  return json_response(json);
}

Answer get_limits(const Call& call) {
  ordered_json json = ordered_json::array();
  for (const domain::LimitKind& each : call.gym->knowledge.catalogue.limits)
    json.push_back({{"id", each.id.text}, {"name", each.name}});
  return json_response(json);
}

}  // namespace repwright::api
