#include "api/clock_json.hpp"

#include <nlohmann/json.hpp>

#include "api/item_json.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;
using timetable::ClockPosition;
using timetable::ClockState;
using timetable::Cue;
using timetable::CueKind;

const char* name_of(CueKind kind) {
  switch (kind) {
    case CueKind::Part:
      return "part";
    case CueKind::CountIn:
      return "count-in";
    case CueKind::Work:
      return "work";
    case CueKind::Rest:
      return "rest";
    case CueKind::Change:
      return "change";
    case CueKind::Tail:
      return "tail";
  }
  return "";
}

const char* name_of(ClockState state) {
  switch (state) {
    case ClockState::Ready:
      return "ready";
    case ClockState::Running:
      return "running";
    case ClockState::Paused:
      return "paused";
    case ClockState::Over:
      return "over";
  }
  return "";
}

std::int64_t ms(base::Duration duration) {
  return base::sim_time(duration).ms;
}

ordered_json cue_json(const Cue& cue, const std::vector<std::string>& lines) {
  ordered_json json{{"id", cue.id},
                    {"kind", name_of(cue.kind)},
                    {"name", cue.name},
                    {"piece", nullptr},
                    {"heat", cue.heat},
                    {"heats", cue.heats},
                    {"round", cue.round},
                    {"rounds", cue.rounds},
                    {"slot", cue.slot},
                    {"slots", cue.slots},
                    {"length_ms", nullptr},
                    {"ends", cue.end == timetable::CueEnd::ByItself ? "by-itself" : "on-word"},
                    {"counts", cue.counting == timetable::Counting::Up ? "up" : "down"},
                    {"called", cue.called},
                    {"into_ms", ms(cue.into)},
                    {"group_starts_ms", ordered_json::array()},
                    {"lines", lines}};
  if (cue.piece) json["piece"] = *cue.piece;
  if (cue.length) json["length_ms"] = ms(*cue.length);
  for (const base::Duration start : cue.group_starts) json["group_starts_ms"].push_back(ms(start));
  return json;
}

ordered_json place_json(const ClockPosition& position, const Cue& cue) {
  ordered_json json{{"cue", position.cue},
                    {"elapsed_ms", position.elapsed.ms},
                    {"length_ms", nullptr},
                    {"ends_ms", nullptr}};
  if (cue.length) json["length_ms"] = ms(*cue.length) + position.added.ms;
  if (const auto end = timetable::end_of(position, cue)) json["ends_ms"] = end->ms;
  return json;
}

ordered_json act_json(const domain::ClockAct& act) {
  return {{"act", domain::name_of(act.deed)}, {"who", act.who}, {"at_ms", act.at_ms}};
}

}  // namespace

ordered_json clock_json(const ClockMoment& moment) {
  const std::vector<Cue>& cues = moment.clock.cues;
  const ClockPosition position = timetable::position_at(moment.acts, cues, moment.now_ms);
  const auto done = timetable::still_done(moment.acts);
  ordered_json json{{"version", moment.acts.size()},
                    {"state", name_of(position.state)},
                    {"at", nullptr},
                    {"ahead", ordered_json::array()},
                    {"over_ms", nullptr},
                    {"last_call_ms", nullptr},
                    {"last_act", nullptr},
                    {"cues", ordered_json::array()}};
  if (position.state != ClockState::Ready)
    json["at"] = place_json(position, cues[static_cast<std::size_t>(position.cue)]);
  const timetable::LineAhead line = timetable::line_ahead(position, cues, moment.now_ms);
  for (const timetable::CueStart& start : line.starts)
    json["ahead"].push_back({{"cue", start.cue}, {"at_ms", start.at_ms}});
  if (line.over_ms) json["over_ms"] = *line.over_ms;
  if (position.call_ms) json["last_call_ms"] = *position.call_ms;
  if (!done.empty()) json["last_act"] = act_json(done.back());
  for (std::size_t i = 0; i < cues.size(); ++i)
    json["cues"].push_back(cue_json(cues[i], moment.clock.lines[i]));
  json["now_ms"] = moment.now_ms;
  return json;
}

}  // namespace repwright::api
