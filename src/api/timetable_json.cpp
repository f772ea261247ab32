#include "api/timetable_json.hpp"

#include <nlohmann/json.hpp>

namespace repwright::api {
namespace {

using timetable::Box;
using timetable::BoxKind;
using timetable::ClockKind;
using timetable::Phase;
using timetable::PhaseKind;
using timetable::Piece;
using Json = nlohmann::ordered_json;

std::string_view name_of(BoxKind kind) {
  switch (kind) {
    case BoxKind::Briefing:
      return "briefing";
    case BoxKind::WarmUp:
      return "warm-up";
    case BoxKind::Work:
      return "work";
    case BoxKind::Rest:
      return "rest";
    case BoxKind::Change:
      return "change";
    case BoxKind::Scores:
      return "scores";
    case BoxKind::CoolDown:
      return "cool-down";
    case BoxKind::Clean:
      return "clean";
    case BoxKind::Note:
      return "note";
  }
  return "";
}

std::string_view name_of(ClockKind kind) {
  switch (kind) {
    case ClockKind::Up:
      return "up";
    case ClockKind::Down:
      return "down";
    case ClockKind::Edges:
      return "edges";
    case ClockKind::Own:
      return "own";
  }
  return "";
}

Json seconds(const std::optional<base::Duration>& duration) {
  return duration ? Json(duration->si()) : Json(nullptr);
}

Json box_json(const Box& box) {
  return {{"name", box.name},
          {"kind", name_of(box.kind)},
          {"planned_s", seconds(box.planned)},
          {"starts_at_s", seconds(box.starts_at)},
          {"piece", box.piece ? Json(*box.piece) : Json(nullptr)}};
}

Json phase_json(const Phase& phase) {
  return {{"kind", phase.kind == PhaseKind::Work ? "work" : "rest"},
          {"start_s", phase.start.duration().si()},
          {"end_s", phase.end.duration().si()},
          {"round", phase.round},
          {"slot", phase.slot}};
}

Json piece_json(const Piece& piece) {
  Json json = {
      {"name", piece.name},          {"clock", name_of(piece.clock)},
      {"cap_s", seconds(piece.cap)}, {"length_s", seconds(piece.length)},
      {"heats", piece.heats},        {"heat_change_s", piece.heats > 1 ? timetable::heat_change.si() : 0.0}};
  if (piece.stagger)
    json["stagger"] = {{"every_s", piece.stagger->every.si()}, {"people", piece.stagger->people}};
  json["phases"] = Json::array();
  for (const Phase& phase : piece.phases) json["phases"].push_back(phase_json(phase));
  return json;
}

Json cut_json(const domain::HourCut& cut) {
  return {{"cut", cut.words},
          {"gives_s", cut.gives_s},
          {"end_p90_s", cut.end_p90_s},
          {"work_left", cut.work_left}};
}

Json change_json(const domain::ChangeOver& change) {
  Json json = {{"from", change.from},
               {"to", change.to},
               {"seconds", change.seconds},
               {"bars_reloaded", change.bars_reloaded},
               {"kit", Json::array()}};
  for (const domain::KitMove& move : change.kit)
    json["kit"].push_back({{"name", move.name},
                           {"stays", move.stays},
                           {"fetched", move.fetched},
                           {"put_away", move.put_away},
                           {"short_by", move.short_by}});
  return json;
}

}  // namespace

std::string timetable_json(const timetable::Timetable& timetable,
                           const std::optional<domain::HourPlan>& plan) {
  Json json = {
      {"class_s", seconds(timetable.class_length)}, {"boxes", Json::array()}, {"pieces", Json::array()}};
  for (const Box& box : timetable.boxes) json["boxes"].push_back(box_json(box));
  for (const Piece& piece : timetable.pieces) json["pieces"].push_back(piece_json(piece));
  if (plan) {
    json["cuts"] = Json::array();
    for (const domain::HourCut& cut : plan->cuts) json["cuts"].push_back(cut_json(cut));
    json["changes"] = Json::array();
    for (const domain::ChangeOver& change : plan->changes) json["changes"].push_back(change_json(change));
  }
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
