#include "board/rule_parts.hpp"

/// Clocks that run: ladders, for time, build, accumulate, for distance, naked minutes.
namespace repwright::board {
/// `Ladder 12 min: 1-2-3-...`.
bool read_ladder(Session& session, Cursor& cursor) {
  const std::size_t from = cursor.position();
  if (!cursor.take_any({"ladder", "climbing ladder", "ascending ladder"})) return false;
  Draft& draft = session.draft().said.amrap && !session.draft().has_work()
                     ? session.draft()
                     : session.clocked(cursor.span_from(from));
  draft.said.ladder = true;
  Cursor ahead = cursor;
  ahead.take_any({"in", "for"});
  if (const auto time = take_time(ahead, session.remarks, Naked::Refused)) {
    draft.clock = time;
    cursor = ahead;
  }
  return true;
}

namespace {

/// `60 burpees FT`: where nothing but a mark follows; elsewhere the letters may be feet.
bool take_short_for_time(Cursor& cursor) {
  if (!cursor.at("ft") || cursor.before().kind == TokenKind::Number) return false;
  Cursor ahead = cursor;
  ahead.next();
  const bool ends = ahead.done() || ahead.at_symbol(',') || ahead.at_symbol(':') || ahead.at_symbol('(') ||
                    ahead.at_symbol(';') || ahead.at_symbol('-');
  if (ends) cursor = ahead;
  return ends;
}

}  // namespace

bool read_for_time(Session& session, Cursor& cursor) {
  const std::size_t from = cursor.position();
  if (cursor.take_any({"not for time", "nft", "not timed", "no clock", "for quality", "quality not time"})) {
    const bool first = session.statement == session.line->first;
    Draft& piece =
        first && session.draft().has_work() ? session.fresh(cursor.span_from(from)) : session.draft();
    if (piece.span.line == 0) piece.span = cursor.span_from(from);
    piece.said.not_for_time = true;
    return true;
  }
  const bool each =
      cursor.take_any({"each for time", "each round for time", "each one for time", "each timed"});
  if (!each &&
      !cursor.take_any({"for time", "chipper", "as fast as possible", "afap", "for times", "4 time"}) &&
      !take_short_for_time(cursor))
    return false;
  cursor.take("of");
  Draft* draft = &session.draft();
  const Entry* last = draft->last_entry();
  const bool behind_work =
      cursor.done() && !session.line->after_blank && nothing_below(session) && !draft->has_clock();
  const bool this_line = last != nullptr && (last->line == session.line_index || behind_work);
  if (draft->has_work() && !this_line) draft = &session.fresh(cursor.span_from(from));
  if (draft->span.line == 0) draft->span = cursor.span_from(from);
  if (draft->block.work && draft->block.rounds) return true;
  draft->said.each_for_time |= each;
  draft->said.for_time |= !each;
  return true;
}

bool read_build(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const bool verb = ahead.take_any(
      {"build to", "build up to", "work up to", "work to", "find", "build", "establish", "hit", "climb to"});
  ahead.take_any({"a", "todays", "your", "the", "an"});
  const bool heavy = ahead.take_any({"heavy", "max", "best"});
  const bool best = ahead.at_number() && ahead.at_any({"rm"}, 1);
  if (!verb && !(heavy && cursor.at("heavy")) && !best) return false;
  std::optional<double> count;
  if (ahead.take_any({"single", "1rm", "one rep max"}))
    count = 1;
  else if (ahead.take("double"))
    count = 2;
  else if (ahead.take("triple"))
    count = 3;
  else if (heavy || (ahead.at_number() && ahead.at_any({"rm", "rep", "reps"}, 1))) {
    count = ahead.take_number();
    ahead.take_any({"rm", "reps", "rep"});
  }
  if (!count && heavy && session.names.find(ahead)) count = 1;
  if (!count) return false;
  ahead.take_any({"rep max", "max"});
  ahead.take_any({"of", "in", "on"});
  Draft& now = session.draft();
  Entry* last = now.last_entry();
  const bool name_above = last != nullptr && !last->amount && !last->sets;
  const auto named = session.names.find(ahead);
  if (!named && !name_above) {
    // `front squat` may stand on the next line.
    Draft& draft = session.clocked(ahead.span_from(from));
    draft.said.build = true;
    draft.scheme = Numbers{.values = {*count}, .span = ahead.span_from(from)};
    cursor = cursor.part(ahead.position() - (ahead.before().text == "in" ? 1 : 0), cursor.end());
    return true;
  }
  Draft& draft = name_above && !named ? now : session.clocked(ahead.span_from(from));
  draft.said.build = true;
  draft.scheme = Numbers{.values = {*count}, .span = ahead.span_from(from)};
  cursor = ahead;
  return true;
}

bool read_accumulate(Session& session, Cursor& cursor) {
  const std::size_t from = cursor.position();
  if (!cursor.take_any({"accumulate", "collect", "accumulated"})) return false;
  Draft& draft = session.clocked(cursor.span_from(from));
  draft.said.accumulate = true;
  return true;
}

bool read_for_distance(Session& session, Cursor& cursor) {
  const std::size_t from = cursor.position();
  if (!cursor.take_any({"for distance", "for max distance", "for metres", "for meters", "max distance"}))
    return false;
  Draft& draft = session.draft();
  if (draft.span.line == 0) draft.span = cursor.span_from(from);
  draft.said.for_distance = true;
  return true;
}

/// `1:00 max cal row` below rounds without a clock: a station of each.
bool station_ahead(Session& session, Cursor behind) {
  const Draft& draft = session.draft();
  if (!draft.block.rounds || draft.clock || draft.said.for_time || draft.said.amrap || draft.block.cap ||
      !behind.take_any({"max", "max reps"}))
    return false;
  behind.take("of");
  take_unit(behind);
  return session.names.find(behind).has_value();
}

/// `11:00 on the clock`, `18 min`, `in 15'`, `4:00`: how long the piece runs.
bool read_bare_clock(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const bool in = ahead.take_any({"in", "for", "within"});
  const auto time = take_time(ahead, session.remarks, in ? Naked::Minutes : Naked::Refused);
  if (!time || station_ahead(session, ahead)) return false;
  if (ahead.take_any({"max reps each", "max reps of each", "max of each", "max each", "each movement",
                      "each exercise", "max effort each"})) {
    session.clocked(ahead.span_from(from)).block.work = time;
    cursor = ahead;
    return true;
  }
  const bool words = ahead.take_any({"on the clock", "clock", "on clock", "long", "total", "window"});
  const bool ends = ahead.done() || ahead.at_symbol(':') || ahead.at_symbol(',') || ahead.at_symbol(';') ||
                    ahead.at("max") || ahead.at("then") || ahead.at_symbol('-') || ahead.at_any({"to"}) ||
                    ahead.at_symbol(')') || ahead.at_symbol('(') || ahead.at_symbol('.');
  bool distance = false;
  for (std::size_t i = 0; i < 60 && ahead.position() + i < ahead.end() && !distance; ++i)
    distance = ahead.reach("for distance", i) > 0;
  if (!in && !words && !ends && !distance) return false;
  ahead.take("to");
  const bool before_work = words || distance || ahead.at("max");
  Draft* draft = &session.draft();
  const bool done_piece = draft->has_work() && before_work && !in;
  const bool two_clocks = draft->has_work() && draft->clock && before_work;
  if (done_piece || two_clocks) draft = &session.fresh(ahead.span_from(from));
  if (draft->span.line == 0) draft->span = ahead.span_from(from);
  draft->clock = time;
  draft->said.for_distance |= distance;
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
