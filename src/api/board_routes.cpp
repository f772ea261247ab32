#include "api/board_routes.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/json_response.hpp"
#include "api/reading_json.hpp"
#include "api/rehearsal_json.hpp"
#include "api/request_body.hpp"
#include "board/tidy.hpp"
#include "board/words.hpp"
#include "timetable/length.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

constexpr std::size_t longest_board = 20'000;  // bytes; a long one has 2,000
constexpr int most_runs = 2000;
constexpr int most_people = 2000;
constexpr int most_places = 1000;
constexpr int largest_seed = 1'000'000'000;

/// The text of a body that has nothing else.
tl::expected<std::string, Fault> only_text(const Request& request) {
  RequestBody body(request.body);
  std::string text = body.text("text", longest_board).value_or("");
  if (!body.has("text")) return refuse_field("text", "`text` is missing");
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  return text;
}

/// A board with errors is not rehearsed: the first of them, where it stands.
std::optional<Fault> first_error(const board::Reading& reading) {
  const auto error = std::ranges::find(reading.diagnostics, domain::Severity::Error,
                                       [](const domain::Diagnostic& each) { return each.severity; });
  if (error == reading.diagnostics.end()) return std::nullopt;
  return Fault{.status = 400,
               .text = error->text,
               .line = error->span.line,
               .column = error->span.column,
               .field = "text"};
}

/// The text to rehearse: what was sent, else the board that was named, else the board of the class.
tl::expected<std::string, Fault> text_to_rehearse(const app::OpenGym& gym,
                                                  const std::optional<std::string>& text,
                                                  std::string board_id, const std::string& class_id) {
  if (text) return *text;
  if (const auto known = gym.classes.find(class_id); board_id.empty() && known != gym.classes.end())
    board_id = known->second.board_id;
  if (board_id.empty()) return refuse_field("text", "neither `text` nor `board` says what to rehearse");
  const auto board = gym.boards.find(board_id);
  if (board == gym.boards.end())
    return tl::unexpected(
        Fault{.status = 404, .text = "no board is called `" + board_id + "`", .field = "board"});
  return board->second;
}

/// A relief coach looks at the one class that was given to them.
std::optional<Fault> beyond_relief(const Call& call, const std::string& class_id) {
  if (!call.caller || call.caller->role != Role::Relief || call.caller->class_id == class_id)
    return std::nullopt;
  return Fault{.status = 403, .text = "a relief coach rehearses the class they take", .field = "class"};
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
  const app::OpenGym& gym = *call.gym;
  RequestBody body(call.request.body);
  const auto sent = body.text("text", longest_board);
  const std::string board_id = body.text("board", 100).value_or("");
  const app::WhatIf what{
      .class_id = body.text("class", 100).value_or(""),
      .heads = body.whole("heads", 1, most_people),
      .out = body.counts("out", 0, most_places),
      .indoors = body.flag("indoors"),
      .runs = body.whole("runs", 1, most_runs).value_or(200),
      .seed = static_cast<std::uint64_t>(body.whole("seed", 0, largest_seed).value_or(1)),
      .stop = call.stop,
  };
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (const auto fault = beyond_relief(call, what.class_id)) return tl::unexpected(*fault);
  const auto text = text_to_rehearse(gym, sent, board_id, what.class_id);
  if (!text) return tl::unexpected(text.error());
  const board::Reading reading = call.at_hand->read(*text);
  if (const auto fault = first_error(reading)) return tl::unexpected(*fault);
  const auto result = app::rehearse_what_if(*call.at_hand, reading, what);
  if (!result) return refuse(result.error());
  return Response{.body = rehearsal_json(result->rehearsal,
                                         {reading.board.title, timetable::fixed_length(reading.board)})};
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
