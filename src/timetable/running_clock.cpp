#include "timetable/running_clock.hpp"

#include <algorithm>

namespace repwright::timetable {

namespace {

using base::SimTime;
using domain::ClockAct;
using domain::ClockDeed;

const Cue& cue_of(const ClockPosition& position, std::span<const Cue> cues) {
  return cues[static_cast<std::size_t>(position.cue)];
}

std::optional<int> index_of(std::span<const Cue> cues, const ClockAct& act) {
  if (act.cue.empty()) return cues.empty() || act.deed == ClockDeed::Jump ? std::nullopt : std::optional(0);
  const auto found = std::ranges::find(cues, act.cue, &Cue::id);
  return found == cues.end() ? std::nullopt : std::optional(static_cast<int>(found - cues.begin()));
}

/// Lets time pass.
ClockPosition later(ClockPosition position, std::span<const Cue> cues, SimTime time) {
  if (position.state != ClockState::Running) return position;
  position.elapsed = position.elapsed + time;
  for (;;) {
    const auto end = end_of(position, cue_of(position, cues));
    if (!end || position.elapsed < *end) return position;
    if (position.cue + 1 == static_cast<int>(cues.size())) {
      position.state = ClockState::Over;
      position.elapsed = *end;
      return position;
    }
    position = {.state = ClockState::Running,
                .cue = position.cue + 1,
                .elapsed = position.elapsed - *end,
                .added = {},
                .cut = {},
                .call_ms = {}};
  }
}

ClockPosition at_begin_of(int cue, ClockState state) {
  return {.state = state, .cue = cue, .elapsed = {}, .added = {}, .cut = {}, .call_ms = {}};
}

ClockPosition after(ClockPosition position, std::span<const Cue> cues, const ClockAct& act,
                    std::int64_t at_ms) {
  switch (act.deed) {
    case ClockDeed::Start:
      return at_begin_of(index_of(cues, act).value_or(0), ClockState::Running);
    case ClockDeed::Pause:
      position.state = ClockState::Paused;
      return position;
    case ClockDeed::GoOn:
      position.state = ClockState::Running;
      return position;
    case ClockDeed::Add: {
      position.added = position.added + base::sim_time(act.seconds);
      if (position.cut) position.cut = *position.cut + base::sim_time(act.seconds);
      const auto end = end_of(position, cue_of(position, cues));
      // Less time than has passed already: it ends now.
      if (!end || position.elapsed <= *end) return position;
      if (position.cut)
        position.cut = position.elapsed;
      else
        position.added = position.added + (position.elapsed - *end);
      return position;
    }
    case ClockDeed::Jump:
      return at_begin_of(index_of(cues, act).value_or(position.cue), position.state);
    case ClockDeed::LastCall:
      position.call_ms = at_ms;
      if (cue_of(position, cues).end == CueEnd::OnWord && cue_of(position, cues).kind == CueKind::Work)
        position.cut = position.elapsed + base::sim_time(last_minute);
      return position;
    case ClockDeed::Stop:
      position.state = ClockState::Over;
      return position;
    case ClockDeed::Undo:
      return position;
  }
  return position;
}

bool at_work(const ClockPosition& position) {
  return position.state == ClockState::Running || position.state == ClockState::Paused;
}

}  // namespace

std::optional<SimTime> end_of(const ClockPosition& position, const Cue& cue) {
  if (position.cut) return position.cut;
  if (cue.end == CueEnd::OnWord) return std::nullopt;
  return base::sim_time(cue.length.value_or(base::Duration{})) + position.added;
}

bool fits(const ClockPosition& position, std::span<const Cue> cues, const ClockAct& act) {
  if (cues.empty()) return false;
  switch (act.deed) {
    case ClockDeed::Start:
      return !at_work(position) && index_of(cues, act).has_value();
    case ClockDeed::Pause:
      return position.state == ClockState::Running;
    case ClockDeed::GoOn:
      return position.state == ClockState::Paused;
    case ClockDeed::Add:
      return at_work(position) && act.seconds.si() != 0;
    case ClockDeed::Jump:
      return at_work(position) && index_of(cues, act).has_value();
    case ClockDeed::LastCall:
      return at_work(position) && cue_of(position, cues).kind == CueKind::Work && !position.call_ms;
    case ClockDeed::Stop:
      return at_work(position);
    case ClockDeed::Undo:
      return false;  // it is no change of a position, but of what led there
  }
  return false;
}

std::vector<ClockAct> still_done(std::span<const ClockAct> acts) {
  std::vector<ClockAct> done;
  for (const ClockAct& act : acts)
    if (act.deed != ClockDeed::Undo)
      done.push_back(act);
    else if (!done.empty())
      done.pop_back();
  return done;
}

ClockPosition position_at(std::span<const ClockAct> acts, std::span<const Cue> cues, std::int64_t now_ms) {
  ClockPosition position;
  const std::vector<ClockAct> done = still_done(acts);
  if (cues.empty() || done.empty()) return position;
  std::int64_t at = done.front().at_ms;
  for (const ClockAct& act : done) {
    const std::int64_t then = std::max(at, act.at_ms);
    position = later(position, cues, {then - at});
    if (fits(position, cues, act)) position = after(position, cues, act, then);
    at = then;
  }
  return later(position, cues, {std::max<std::int64_t>(0, now_ms - at)});
}

LineAhead line_ahead(const ClockPosition& position, std::span<const Cue> cues, std::int64_t now_ms) {
  LineAhead line;
  if (position.state != ClockState::Running) return line;
  ClockPosition at = position;
  std::int64_t begins = now_ms - position.elapsed.ms;
  for (;;) {
    line.starts.push_back({at.cue, begins});
    const auto end = end_of(at, cue_of(at, cues));
    if (!end) return line;
    begins += end->ms;
    if (at.cue + 1 == static_cast<int>(cues.size())) break;
    at = at_begin_of(at.cue + 1, ClockState::Running);
  }
  line.over_ms = begins;
  return line;
}

}  // namespace repwright::timetable
