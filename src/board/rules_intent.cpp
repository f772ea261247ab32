#include <fmt/format.h>

#include <utility>

#include "board/session.hpp"

/// How a piece is meant: its cap, and how long and how hard it should be.
namespace repwright::board {
using base::Duration;

namespace {

/// `leave 30 s spare every round`
bool read_spare(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  if (!ahead.take_any({"leave", "keep", "save"})) return false;
  const auto spare = take_time(ahead, session.remarks, Naked::Seconds);
  if (!spare || !ahead.take_any({"spare", "to spare", "of rest", "rest", "left"})) return false;
  ahead.take_any({"every time", "each time", "every round", "each round", "every interval", "each interval",
                  "at least"});
  domain::Intent intent = session.draft().block.intent.value_or(domain::Intent{});
  intent.spare = spare;
  session.draft().block.intent = intent;
  cursor = ahead;
  return true;
}

/// `10-14 min`, `12:00+`, `20 s spare`, the cursor behind a first time that was read; whether it was one.
bool take_intended_time(Session& session, Cursor& cursor, Duration time, domain::Intent& intent) {
  if (cursor.take_any({"spare", "to spare"})) {
    intent.spare = time;
    return true;
  }
  std::optional<double> max = time.si();
  if (cursor.take_symbol('+')) {
    max.reset();
  } else if (cursor.take_symbol('-') || cursor.take("to")) {
    const auto end = take_time(cursor, session.remarks, Naked::Minutes);
    if (!end) return false;
    max = end->si();
  }
  intent.time = domain::Intent::Window{time.si(), max};
  return true;
}

/// `3+ rounds`, `RPE 7`, `10-14 min`: bounds and what they bound; whether it was one.
bool take_intended_bounds(Cursor& cursor, domain::Intent& intent) {
  const bool effort_first = cursor.take("rpe");
  const std::optional<Bounds> read = take_bounds(cursor);
  if (!read) return false;
  const Bounds bounds = *read;
  const auto in_seconds = [&](double unit) {
    const std::optional<double> max = bounds.max ? std::optional(*bounds.max * unit) : std::nullopt;
    return domain::Intent::Window{bounds.min * unit, max};
  };
  if (effort_first || cursor.take("rpe")) {
    intent.effort = domain::Range{bounds.min, bounds.max.value_or(10)};
  } else if (cursor.take_any({"rounds", "round", "rds", "rd", "rnds"})) {
    intent.rounds = domain::Intent::Window{bounds.min, bounds.max};
  } else if (cursor.take_any({"min", "mins", "minutes", "minute"}) || cursor.take_symbol('\'')) {
    intent.time = in_seconds(60);
  } else if (cursor.take_any({"s", "sec", "seconds"}) || cursor.take_symbol('"')) {
    intent.time = in_seconds(1);
  } else {
    return false;
  }
  return true;
}

/// Swaps bounds that run backwards; whether they did.
bool put_forwards(std::optional<domain::Intent::Window>& window) {
  if (!window || !window->max || *window->max >= window->min) return false;
  std::swap(window->min, *window->max);
  return true;
}

}  // namespace

bool read_cap(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  std::optional<Duration> cap;
  if (ahead.take_any({"cap", "tc", "time cap", "capped at", "cap at", "hard cap", "time limit", "cap of"})) {
    ahead.take_symbol(':');
    ahead.take_symbol('=');
    cap = take_time(ahead, session.remarks, Naked::Minutes);
  } else {
    if (ahead.take("with") || (ahead.take("w") && ahead.take_symbol('/'))) ahead.take("a");
    ahead.take("in");
    cap = take_time(ahead, session.remarks, Naked::Minutes);
    if (!cap || !ahead.take_any({"cap", "tc", "time cap", "limit", "time limit"})) return false;
  }
  if (!cap) return false;
  Draft& draft = session.draft();
  if (draft.span.line == 0) draft.span = ahead.span_from(from);
  if (cap->si() <= 0)
    session.remarks.add(
        {"no-amount", ahead.span_from(from),
         fmt::format("`{}`: a cap is longer than nothing", session.kept(ahead.span_from(from))),
         "write the minutes"});
  if (draft.block.cap && *draft.block.cap != *cap)
    session.remarks.add({"second-clock", ahead.span_from(from),
                         fmt::format("`{}`: the piece already has a cap, the last one counts",
                                     session.kept(ahead.span_from(from))),
                         "keep one of the two"});
  draft.block.cap = cap;
  draft.cap_span = ahead.span_from(from);
  cursor = ahead;
  return true;
}

bool read_intent(Session& session, Cursor& cursor) {
  if (read_spare(session, cursor)) return true;
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  if (!ahead.take_any({"intent", "aim for", "aim", "meant to be", "should take", "goal"})) return false;
  ahead.take_symbol(':');
  ahead.take_symbol('=');
  domain::Intent intent;
  bool found = false;
  while (!ahead.done()) {
    Cursor part = ahead;
    if (part.take_symbol(',') || part.take_symbol(';') || part.take("and")) {
      ahead = part;
      continue;
    }
    Cursor timed = part;
    const auto time = part.at("rpe") ? std::nullopt : take_time(timed, session.remarks, Naked::Refused);
    if (time) part = timed;
    const bool taken =
        time ? take_intended_time(session, part, *time, intent) : take_intended_bounds(part, intent);
    if (!taken) break;
    found = true;
    ahead = part;
  }
  if (!found) return false;
  const bool time_backwards = put_forwards(intent.time);
  const bool rounds_backwards = put_forwards(intent.rounds);
  const bool effort_backwards = intent.effort && intent.effort->max < intent.effort->min;
  if (time_backwards || rounds_backwards || effort_backwards) {
    session.remarks.add({"intent-backwards", ahead.span_from(from),
                         fmt::format("`{}` runs backwards: read from the smaller number to the larger",
                                     session.kept(ahead.span_from(from))),
                         "swap the two numbers"});
    if (effort_backwards) std::swap(intent.effort->min, intent.effort->max);
  }
  Draft& draft = session.draft();
  const auto spare = draft.block.intent ? draft.block.intent->spare : std::nullopt;
  if (!intent.spare) intent.spare = spare;
  draft.block.intent = intent;
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
