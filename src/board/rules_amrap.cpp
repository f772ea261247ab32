#include "board/rule_parts.hpp"

/// As many rounds as fit, once or again and again.
namespace repwright::board {
using base::Duration;

namespace {

/// Whether a clock for as many rounds as possible stands on the rest of the line.
bool amrap_ahead(Cursor cursor) {
  for (int near = 0; near < 4 && !cursor.done(); ++near, cursor.next())
    if (cursor.at_any({"amrap", "as many rounds as possible"})) return true;
  return false;
}

/// `/ 2 off`, `/ 2' rest`, `on / 2:00 off`, `, 2 min rest`.
std::optional<Duration> take_off_time(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  ahead.take("on");
  if (!ahead.take_symbol('/') && !ahead.take_symbol(',') && !ahead.take("with")) return std::nullopt;
  const bool slash = cursor.at_symbol('/') || cursor.at("on");
  ahead.take("rest");
  const auto off = take_time(ahead, session.remarks, Naked::Minutes);
  if (!off) return std::nullopt;
  const bool word = ahead.take_any({"off", "rest", "recovery"});
  if (!word && !slash) return std::nullopt;
  // `AMRAP 6 / rest 2 / AMRAP 6`: the rest parts two pieces.
  Cursor next = ahead;
  const bool parted = next.take_symbol('/') || next.take_symbol(',') || next.take_symbol(arrow_sign) ||
                      next.take_symbol('-') || next.take("then");
  if (parted && amrap_ahead(next)) return std::nullopt;
  cursor = ahead;
  return off;
}

void start_remaining(Session& session, Draft& draft) {
  draft.said.amrap = draft.said.remaining = true;
  for (Section& section : draft.sections)
    if (section.role == Role::Plain && !section.entries.empty()) section.role = Role::Once;
  draft.sections.push_back({.role = Role::Rounds, .line = session.line_index});
}

/// `5 x` before an AMRAP.
std::optional<int> take_times(Cursor& cursor) {
  if (!cursor.at_number()) return std::nullopt;
  Cursor ahead = cursor;
  const auto count = ahead.take_count();
  if (!count) return std::nullopt;
  if (!ahead.take_symbol(times_sign) && !ahead.take_any({"times", "rounds of", "rds of", "sets of"}))
    return std::nullopt;
  cursor = ahead;
  return count;
}

bool take_amrap_word(Cursor& cursor) {
  return cursor.take_any({"amrap", "amraps", "as many rounds as possible",
                          "as many rounds and reps as possible", "as many reps as possible"});
}

/// `AMRAP 4 x 4`: how often, behind the minutes. A number with a name behind it is work.
std::optional<int> take_times_behind(Cursor& cursor) {
  Cursor ahead = cursor;
  if (!ahead.take_symbol(times_sign)) return std::nullopt;
  const auto count = ahead.take_count();
  ahead.take_any({"times", "rounds", "rds"});
  if (!count || !(ahead.done() || ahead.at_symbol(',') || ahead.at_symbol(':') || ahead.at_symbol('(')))
    return std::nullopt;
  cursor = ahead;
  return count;
}

/// `10-18: AMRAP 10 front squats, 10 sit-ups`: where the window gives the minutes, the number is of the work.
bool amount_of_first_work(Session& session, const Cursor& cursor) {
  const Chapter& chapter = session.chapter();
  Cursor ahead = cursor;
  return chapter.from && chapter.to && ahead.take_count() && session.names.find(ahead);
}

/// `AMRAP 7` below work that no clock runs for yet, and nothing below it: the clock of that work.
bool at_foot_of_work(Session& session, const Cursor& behind) {
  const Draft& draft = session.draft();
  const Said& said = draft.said;
  const bool clocked = draft.clock || said.amrap || said.for_time || said.every || said.stations ||
                       said.build || said.accumulate || said.max_effort || said.for_distance || said.relay ||
                       draft.block.work || draft.block.rounds || draft.block.cap;
  return behind.done() && draft.has_work() && !clocked && !said.sets && !said.superset &&
         !session.line->after_blank && nothing_below(session);
}

}  // namespace

bool read_amrap(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  auto times = take_times(ahead);
  Cursor before = ahead;
  std::optional<Duration> length = take_time(before, session.remarks, Naked::Refused);
  if (length) {
    before.take_any({"of"});
    before.take_symbol('-');
    if (before.at_any({"amrap", "amraps"})) {
      ahead = before;
    } else {
      length.reset();
    }
  }
  if (!take_amrap_word(ahead) || ahead.at_symbol('@')) return false;
  const bool ladder_first = ahead.take("ladder");
  if (ahead.take_any({"in remaining time", "in the remaining time", "in the time left",
                      "for the remaining time", "in remainder", "in the remainder", "with the remaining time",
                      "remaining time"})) {
    start_remaining(session, session.draft());
    cursor = ahead;
    return true;
  }
  ahead.take_any({"in", "for"});
  ahead.take_symbol('-');
  if (!length && !amount_of_first_work(session, ahead)) {
    Cursor time = ahead;
    length = take_time(time, session.remarks, Naked::Minutes);
    if (length) ahead = time;
  }
  if (!times && length) times = take_times_behind(ahead);
  ahead.take("of");
  const auto off = take_off_time(session, ahead);
  const bool foot = !times && !off && at_foot_of_work(session, ahead);
  Draft& draft = foot ? session.draft() : session.clocked(ahead.span_from(from));
  draft.said.amrap = true;
  if (ahead.take("ladder") || ladder_first) draft.said.ladder = true;
  if (times || off) {
    check_rounds(session, times.value_or(1), ahead.span_from(from));
    if (times) draft.block.rounds = times;
    draft.block.work = length;
    draft.block.rest = off;
    draft.said.amrap = !length.has_value();
  } else if (length) {
    draft.clock = length;
  }
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
