#include "api/runner_routes.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "api/class_of_call.hpp"
#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "api/request_body.hpp"
#include "app/runs.hpp"
#include "app/who_comes.hpp"
#include "domain/people_search.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

constexpr double longest_ago_s = 14'400;
constexpr int runs = 100;

}  // namespace

Answer get_runners(const Call& call) {
  const auto known = class_in(call);
  if (!known) return tl::unexpected(known.error());
  const auto there = app::who_comes(call.gym->people, **known, std::nullopt);
  if (!there) return refuse(there.error());
  const auto lines = call.services.store.door_lines(call.id);
  if (!lines) return refuse(lines.error());
  const app::OutAndIn now = app::out_and_in(*lines);
  ordered_json json{{"runners", ordered_json::array()}};
  for (const domain::Person& person : there->people) {
    ordered_json row{{"id", person.id.text}, {"name", person.name}, {"out_since_s", nullptr}};
    const auto out = std::ranges::find(now.out, person.id, &app::StillOut::person);
    if (out != now.out.end()) row["out_since_s"] = (call.services.gate.now() - out->since).count();
    json["runners"].push_back(std::move(row));
  }
  return json_response(json);
}

Answer get_runs(const Call& call) {
  const auto known = class_in(call);
  if (!known) return tl::unexpected(known.error());
  ordered_json json{{"runs", ordered_json::array()}};
  const auto board = call.gym->knowledge.boards.find((*known)->board_id);
  if (board == call.gym->knowledge.boards.end()) return json_response(json);
  const app::WhatIf as_it_is{.class_id = call.id, .heads = {}, .out = {}, .runs = runs, .stop = call.stop};
  const auto done = app::rehearse_what_if(*call.at_hand, call.at_hand->read(board->second), as_it_is);
  if (!done && done.error().code == base::ErrorCode::Invalid) return json_response(json);
  if (!done) return refuse(done.error());
  for (const app::RunLength& run : app::run_lengths(done->rehearsal))
    json["runs"].push_back({{"id", run.person.text},
                            {"p10_s", number_json(run.p10_s)},
                            {"p50_s", number_json(run.p50_s)},
                            {"p90_s", number_json(run.p90_s)}});
  return json_response(json);
}

Answer post_runner(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  RequestBody body(call.request.body);
  domain::DoorLine line{.class_id = call.id,
                        .person = {body.needed_text("person", longest_name)},
                        .key = body.needed_text("key", longest_key)};
  const std::string act = body.needed_text("act", longest_name);
  const auto ago = std::chrono::seconds(std::lround(body.number("ago_s", 0, longest_ago_s).value_or(0)));
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (act != "out" && act != "in") return refuse_field("act", "`act` is not out or in");
  if (domain::find_person(call.gym->people, line.person) == nullptr)
    return refuse_field("person", "no person is called `" + line.person.text + "`");
  line.act = act == "out" ? domain::DoorAct::Out : domain::DoorAct::In;
  line.seen = call.services.gate.now() - ago;
  const auto number = call.services.store.add_door_line(line, call.stamp());
  if (!number) return refuse(number.error());
  Response response = json_response({{"number", *number}});
  response.changed = {Topic::Door};
  return response;
}

}  // namespace repwright::api
