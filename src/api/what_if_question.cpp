#include "api/what_if_question.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace repwright::api {
namespace {

constexpr int most_runs = 2000;
constexpr int most_people = 2000;
constexpr int most_places = 1000;
constexpr int largest_seed = 1'000'000'000;

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
  const auto board = gym.knowledge.boards.find(board_id);
  if (board == gym.knowledge.boards.end())
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

tl::expected<WhatIfQuestion, Fault> what_if_question(const Call& call) {
  RequestBody body(call.request.body);
  return what_if_question(call, body);
}

tl::expected<WhatIfQuestion, Fault> what_if_question(const Call& call, RequestBody& body) {
  const auto sent = body.text("text", longest_board);
  const std::string board_id = body.text("board", 100).value_or("");
  app::WhatIf what{
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
  auto text = text_to_rehearse(*call.gym, sent, board_id, what.class_id);
  if (!text) return tl::unexpected(text.error());
  board::Reading reading = call.at_hand->read(*text);
  if (const auto fault = first_error(reading)) return tl::unexpected(*fault);
  return WhatIfQuestion{std::move(*text), std::move(reading), std::move(what)};
}

}  // namespace repwright::api
