#include "api/result_routes.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "api/class_of_call.hpp"
#include "api/form_json.hpp"
#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "api/request_body.hpp"
#include "app/results.hpp"
#include "app/score_form.hpp"
#include "domain/rehearsal_names.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

constexpr std::array<std::string_view, 5> own_bests{"first", "beyond", "within-luck", "below", "unknown"};

/// Who wants to be in rankings.
base::Result<std::set<std::string>> consenting(store::Store& store) {
  return store.paper(domain::Paper::Rankings).map([](const domain::KeptPaper& paper) {
    std::set<std::string> ids;
    for (std::size_t at = 0; at < paper.text.size();) {
      const std::size_t end = std::min(paper.text.find('\n', at), paper.text.size());
      if (end > at) ids.insert(paper.text.substr(at, end - at));
      at = end + 1;
    }
    return ids;
  });
}

/// Those who want to be ranked, by version; equal values share a place.
ordered_json rankings_json(const app::PieceResults& piece, const std::set<std::string>& wanting) {
  std::map<std::string, std::vector<const app::ResultLine*>> by_version;
  for (const app::ResultLine& line : piece.lines)
    if (line.value && wanting.contains(line.person.text)) by_version[line.done_as].push_back(&line);
  const double up = piece.measure == domain::Measure::Seconds ? 1 : -1;
  ordered_json json = ordered_json::array();
  for (auto& [version, lines] : by_version) {
    if (lines.size() < 2) continue;
    std::ranges::stable_sort(lines, {},
                             [&](const app::ResultLine* line) { return up * line->value.value_or(0); });
    ordered_json rows = ordered_json::array();
    std::size_t place = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (i == 0 || lines[i]->value != lines[i - 1]->value) place = i + 1;
      rows.push_back({{"place", place}, {"name", lines[i]->name}, {"score", lines[i]->score}});
    }
    json.push_back({{"done_as", version}, {"said_as", lines.front()->said_as}, {"rows", std::move(rows)}});
  }
  return json;
}

ordered_json result_json(const app::ResultLine& line) {
  ordered_json json{{"id", line.person.text},  {"name", line.name},
                    {"score", line.score},     {"done_as", line.done_as},
                    {"said_as", line.said_as}, {"own", own_bests[static_cast<std::size_t>(line.own)]},
                    {"before", nullptr},       {"luck", number_json(line.noise)}};
  if (line.best_before) json["before"] = number_json(*line.best_before);
  return json;
}

bool is_theirs(const Call& call) {
  return call.who().role == Role::Person && call.who().person.text == call.id;
}

}  // namespace

Answer get_score_form(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  const auto form = app::score_form(*call.at_hand, call.id, call.stop);
  if (!form) return refuse(form.error());
  ordered_json json{{"pieces", ordered_json::array()}};
  for (const app::FormPiece& piece : *form) {
    ordered_json one{{"piece", piece.piece},           {"title", piece.title}, {"scheme", piece.scheme},
                     {"form", name_of(piece.form)},    {"cap_s", nullptr},     {"parts", piece.parts},
                     {"people", ordered_json::array()}};
    if (piece.cap) one["cap_s"] = seconds_json(*piece.cap);
    for (const app::FormPerson& person : piece.people)
      if (call.who().role != Role::Person || call.who().person == person.person)
        one["people"].push_back(form_person_json(person));
    json["pieces"].push_back(std::move(one));
  }
  return json_response(json);
}

Answer get_results(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  const auto scores = call.services.store.scores();
  if (!scores) return refuse(scores.error());
  const auto results = app::class_results(*call.at_hand, call.id, *scores, call.stop);
  if (!results) return refuse(results.error());
  const auto wanting = consenting(call.services.store);
  if (!wanting) return refuse(wanting.error());
  ordered_json json{{"pieces", ordered_json::array()}};
  for (const app::PieceResults& piece : *results) {
    ordered_json people = ordered_json::array();
    for (const app::ResultLine& line : piece.lines) people.push_back(result_json(line));
    json["pieces"].push_back({{"piece", piece.piece},
                              {"measure", domain::name_of(piece.measure)},
                              {"reps_per_round", number_json(piece.reps_per_round)},
                              {"people", std::move(people)},
                              {"rankings", rankings_json(piece, *wanting)}});
  }
  return json_response(json);
}

Answer get_consent(const Call& call) {
  if (!is_theirs(call)) return not_yours();
  const auto wanting = consenting(call.services.store);
  if (!wanting) return refuse(wanting.error());
  return json_response({{"in_rankings", wanting->contains(call.id)}});
}

Answer put_consent(const Call& call) {
  if (!is_theirs(call)) return not_yours();
  RequestBody body(call.request.body);
  const bool wants = body.flag("in_rankings");
  if (!body.has("in_rankings")) return refuse_field("in_rankings", "`in_rankings` is missing");
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  store::Store& store = call.services.store;
  const auto paper = store.paper(domain::Paper::Rankings);
  if (!paper) return refuse(paper.error());
  std::string text = store::without_line(paper->text, call.id);
  if (wants) text += call.id + "\n";
  const auto saved = store.save_paper(domain::Paper::Rankings, text, call.seen(paper->saved));
  if (!saved) return refuse(saved.error());
  return json_response({{"in_rankings", wants}});
}

}  // namespace repwright::api
