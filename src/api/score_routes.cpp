#include "api/score_routes.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/class_of_call.hpp"
#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "api/number_id.hpp"
#include "api/relief.hpp"
#include "api/request_body.hpp"
#include "api/score_json.hpp"
#include "domain/people_search.hpp"
#include "store/scores_csv.hpp"

namespace repwright::api {
namespace {

using base::Result;
using domain::KeptScore;
using domain::PersonId;
using nlohmann::ordered_json;

constexpr std::size_t longest_score = 60;
constexpr double hardest = 10;
constexpr int most_versions = 1'000'000;

Response told(const ordered_json& json) {
  Response response = json_response(json);
  response.changed = {Topic::Scores};
  return response;
}

/// Whether who asks is somebody else than that person and no coach.
bool is_somebody_else(const Call& call, const PersonId& person) {
  return call.who().role == Role::Person && call.who().person != person;
}

std::optional<Fault> unknown_person(const Call& call, const PersonId& person) {
  if (is_somebody_else(call, person)) return not_yours().value();
  if (domain::find_person(call.gym->people, person) != nullptr) return std::nullopt;
  return Fault{.status = 400, .text = "no person is called `" + person.text + "`", .field = "person"};
}

/// The person of the body; who is no coach need not name themselves.
PersonId person_in(RequestBody& body, const Call& call) {
  if (call.who().role == Role::Person && !body.has("person")) return call.who().person;
  return {body.needed_text("person", longest_name)};
}

/// What the body says of a line, put over `entry`.
tl::expected<domain::ScoreEntry, Fault> score_in(RequestBody& body, const Call& call,
                                                 domain::ScoreEntry entry) {
  entry.person = person_in(body, call);
  entry.text = body.needed_text("score", longest_score);
  entry.value = domain::read_score(entry.text);
  entry.piece = body.text("piece", longest_name).value_or("");
  entry.version = body.text("done_as", longest_name).value_or("");
  entry.effort = body.number("effort", 0, hardest);
  const auto flag = store::flag_of(body.text("flag", longest_name).value_or(""));
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (!flag) return refuse_field("flag", "`flag` is not ill, hot, easy or nothing");
  entry.flag = *flag;
  if (const auto fault = unknown_person(call, entry.person)) return tl::unexpected(*fault);
  return entry;
}

/// A line that who asks may see, as it is and as it was; the newest last.
tl::expected<std::vector<KeptScore>, Fault> line_in(const Call& call) {
  const auto number = number_in(call.id);
  if (!number) return nothing_called("score", call.id);
  auto versions = call.services.store.score_versions(*number);
  if (!versions) return refuse(versions.error());
  const domain::ScoreEntry& now = versions->back().entry;
  if (is_somebody_else(call, now.person) || takes_another_class(call, now.class_id)) return not_yours();
  return std::move(*versions);
}

}  // namespace

Answer get_class_scores(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  const auto scores = call.services.store.scores_of_class(call.id);
  if (!scores) return refuse(scores.error());
  ordered_json json = ordered_json::array();
  for (const KeptScore& kept : *scores)
    if (!is_somebody_else(call, kept.entry.person)) json.push_back(score_json(kept));
  return json_response(json);
}

Answer post_class_score(const Call& call) {
  const auto known = class_in(call);
  if (!known) return tl::unexpected(known.error());
  domain::ScoreEntry line;
  line.date = (*known)->date.value_or(call.services.gate.today());
  line.class_id = call.id;
  line.board_id = (*known)->board_id;
  line.entered_by = call.who().name;
  RequestBody body(call.request.body);
  line.key = body.text("key", longest_key).value_or("");
  const auto entry = score_in(body, call, std::move(line));
  if (!entry) return tl::unexpected(entry.error());
  store::Store& store = call.services.store;
  const auto added = call.services.desk.enter(
      {*entry, call.stamp()},
      [&](const std::vector<domain::NewScore>& scores) { return store.add_scores(scores); });
  if (!added) return refuse(added.error());
  return told({{"number", added->number}, {"version", 1}});
}

Answer put_score(const Call& call) {
  const auto line = line_in(call);
  if (!line) return tl::unexpected(line.error());
  RequestBody body(call.request.body);
  const auto seen = body.whole("version", 1, most_versions);
  if (!body.has("version")) return refuse_field("version", "`version` is missing");
  const auto entry = score_in(body, call, line->back().entry);
  if (!entry) return tl::unexpected(entry.error());
  store::Store& store = call.services.store;
  domain::Saved saved;
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    const auto corrected = store.correct_score(
        line->back().number, *entry, {static_cast<domain::Version>(seen.value_or(0)), call.stamp()});
    if (!corrected) return tl::unexpected(corrected.error());
    saved = *corrected;
    return store.scores().map([&](const std::vector<KeptScore>& all) {
      gym.knowledge.scores.clear();
      for (const KeptScore& each : all) gym.knowledge.scores.push_back(each.entry);
    });
  });
  if (!done) return refuse(done.error());
  return told({{"number", line->back().number}, {"version", saved.version}});
}

Answer get_score_versions(const Call& call) {
  const auto line = line_in(call);
  if (!line) return tl::unexpected(line.error());
  ordered_json json = ordered_json::array();
  for (const KeptScore& each : *line)
    // A line that was somebody else's by mistake is not theirs to read.
    if (!is_somebody_else(call, each.entry.person)) json.push_back(score_json(each));
  return json_response(json);
}

Answer get_efforts(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  const auto efforts = call.services.store.efforts(call.id);
  if (!efforts) return refuse(efforts.error());
  ordered_json json = ordered_json::array();
  for (const domain::ClassEffort& each : *efforts)
    if (!is_somebody_else(call, each.person))
      json.push_back({{"person", each.person.text}, {"effort", number_json(each.effort)}});
  return json_response(json);
}

Answer put_effort(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  RequestBody body(call.request.body);
  domain::ClassEffort effort{.class_id = call.id, .person = person_in(body, call)};
  const auto said = body.number("effort", 0, hardest);
  if (!body.has("effort")) return refuse_field("effort", "`effort` is missing");
  effort.key = body.text("key", longest_key).value_or("");
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  effort.effort = said.value_or(0);
  if (const auto fault = unknown_person(call, effort.person)) return tl::unexpected(*fault);
  const auto put = call.services.store.put_effort(effort, call.stamp());
  if (!put) return refuse(put.error());
  return told({{"person", effort.person.text}, {"effort", number_json(effort.effort)}});
}

}  // namespace repwright::api
