#include "api/rehearsal_json.hpp"

#include <cmath>
#include <nlohmann/json.hpp>

#include "api/reasons_json.hpp"
#include "domain/finding_help.hpp"
#include "domain/rehearsal_names.hpp"

namespace repwright::api {
namespace {

using domain::BoxOutcome;
using domain::Draw;
using domain::Finding;
using domain::PersonOutcome;
using domain::PieceOutcome;
using domain::PlaceUse;
using domain::RunnerBack;
using domain::Spread;
using domain::StepTrace;
using Json = nlohmann::ordered_json;

/// Milli-units are finer than any forecast; the rounding keeps documents small and diffs readable.
double milli(double value) {
  return std::round(value * 1000.0) / 1000.0;
}

Json optional_number(const std::optional<double>& value) {
  return value ? Json(milli(*value)) : Json(nullptr);
}

Json spread_json(const Spread& spread) {
  return {{"mean", milli(spread.mean)},
          {"p10", milli(spread.p10)},
          {"p50", milli(spread.p50)},
          {"p90", milli(spread.p90)}};
}

Json step_json(const StepTrace& step) {
  return {{"round", step.round},
          {"step", step.step.index},
          {"line", step.line},
          {"version", step.version.text},
          {"load_kg", optional_number(step.load_kg)},
          {"amount", milli(step.amount)},
          {"share", milli(step.share_of_runs)},
          {"start_s", milli(step.start_s)},
          {"end_s", milli(step.end_s)},
          {"work_s", milli(step.work_s)},
          {"rest_s", milli(step.rest_s)},
          {"wait_s", milli(step.wait_s)},
          {"sets", milli(step.sets)}};
}

Json piece_json(const PieceOutcome& piece) {
  Json json = {
      {"piece", piece.piece},          {"measure", name_of(piece.measure)}, {"mean", milli(piece.score.mean)},
      {"sd", milli(piece.score.sd)},   {"sd_day", milli(piece.sd_day)},     {"p10", milli(piece.score.p10)},
      {"p50", milli(piece.score.p50)}, {"p90", milli(piece.score.p90)}};
  if (piece.rounds) {
    json["rounds"] = spread_json(*piece.rounds);
    json["reps_per_round"] = milli(piece.reps_per_round);
  }
  json["capped"] = milli(piece.capped);
  if (piece.reps_at_cap) json["reps_at_cap"] = spread_json(*piece.reps_at_cap);
  json["interval_s"] = Json::array();
  for (const double seconds : piece.interval_s) json["interval_s"].push_back(milli(seconds));
  json["demand_share"] = milli(piece.demand_share);
  json["limiter"] = name_of(piece.limiter);
  json["wait_s"] = milli(piece.wait_s);
  json["steps"] = Json::array();
  for (const StepTrace& step : piece.steps) json["steps"].push_back(step_json(step));
  return json;
}

Json person_json(const PersonOutcome& person) {
  Json pieces = Json::array();
  for (const PieceOutcome& piece : person.pieces) pieces.push_back(piece_json(piece));
  return {{"id", person.person.text}, {"name", person.name}, {"pieces", std::move(pieces)}};
}

Json place_json(const PlaceUse& place) {
  Json queue = Json::array();
  for (const auto& [at, waiting] : place.queue) queue.push_back({milli(at), milli(waiting)});
  return {{"place", place.place.text},
          {"name", place.name},
          {"count", place.count},
          {"wait_mean_s", milli(place.wait_mean_s)},
          {"wait_p90_s", milli(place.wait_p90_s)},
          {"queue_max_mean", milli(place.queue_max_mean)},
          {"queue", std::move(queue)}};
}

Json runner_json(const RunnerBack& runner) {
  return {{"piece", runner.piece},
          {"round", runner.round},
          {"step", runner.step.index},
          {"id", runner.person.text},
          {"back_s", spread_json(runner.back_s)}};
}

Json timetable_json(const domain::ClassOutcome& outcome) {
  Json boxes = Json::array();
  for (const BoxOutcome& box : outcome.boxes)
    boxes.push_back({{"name", box.name},
                     {"kind", box.kind},
                     {"piece", box.piece ? Json(*box.piece) : Json(nullptr)},
                     {"planned_s", optional_number(box.planned_s)},
                     {"start_p50_s", milli(box.start_p50_s)},
                     {"end_p50_s", milli(box.end_p50_s)},
                     {"end_p90_s", milli(box.end_p90_s)}});
  return {{"planned_s", optional_number(outcome.planned_s)},
          {"p50_s", milli(outcome.p50_s)},
          {"p90_s", milli(outcome.p90_s)},
          {"over_share", milli(outcome.over_share)},
          {"boxes", std::move(boxes)}};
}

Json finding_json(const Finding& finding) {
  Json people = Json::array();
  for (const domain::PersonId& person : finding.people) people.push_back(person.text);
  const std::string_view help = help_with(finding.kind);
  return {{"finding", name_of(finding.kind)},
          {"severity", name_of(finding.severity)},
          {"text", finding.text},
          {"help", help.empty() ? Json(nullptr) : Json(help)},
          {"line", finding.line},
          {"people", std::move(people)}};
}

Json draw_json(const Draw& draw) {
  Json ends = Json::array();
  for (const double end : draw.step_ends_s) ends.push_back(milli(end));
  return {{"person", draw.person},      {"piece", draw.piece},          {"run", draw.run},
          {"score", milli(draw.score)}, {"vo2max", milli(draw.vo2max)}, {"step_ends_s", std::move(ends)}};
}

template <class T, class F>
Json list_json(const std::vector<T>& values, F encode) {
  Json list = Json::array();
  for (const T& value : values) list.push_back(encode(value));
  return list;
}

}  // namespace

std::string rehearsal_json(const domain::Rehearsal& rehearsal, const BoardHead& board,
                           const domain::Why* why) {
  std::optional<double> fixed;
  if (board.fixed_length) fixed = board.fixed_length->si();
  Json json = {{"board", {{"title", board.title}, {"fixed_seconds", optional_number(fixed)}}},
               {"runs", rehearsal.runs},
               {"seed", rehearsal.seed},
               {"notes", rehearsal.notes},
               {"pieces", rehearsal.piece_names},
               {"people", list_json(rehearsal.people, person_json)},
               {"runners", list_json(rehearsal.runners, runner_json)},
               {"places", list_json(rehearsal.places, place_json)},
               {"timetable", timetable_json(rehearsal.timetable)},
               {"findings", list_json(rehearsal.findings, finding_json)}};
  if (!rehearsal.draws.empty()) json["draws"] = list_json(rehearsal.draws, draw_json);
  if (why != nullptr) json["why"] = why_json(*why);
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
