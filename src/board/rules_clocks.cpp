#include <fmt/format.h>

#include <cmath>

#include "board/session.hpp"

/// Clocks that run: AMRAP, every minute, for time, build, accumulate, for distance, naked minutes.
namespace repwright::board {
namespace {

using base::Duration;

constexpr double most_rounds = 200;

void check_count(Session& session, double count, const domain::Span& span) {
  if (count <= 0)
    session.remarks.add({"no-amount",
                         span,
                         fmt::format("`{}`: a count begins at 1", session.kept(span)),
                         "write how many",
                         {}});
  if (count > most_rounds)
    session.remarks.add(
        {"too-many",
         span,
         fmt::format("`{}`: no session holds more than {} rounds", session.kept(span), most_rounds),
         "write rounds as 1 to 200",
         {}});
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

}  // namespace

bool read_amrap(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const auto times = take_times(ahead);
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
  if (!length) {
    Cursor time = ahead;
    length = take_time(time, session.remarks, Naked::Minutes);
    if (length) ahead = time;
  }
  ahead.take("of");
  const auto off = take_off_time(session, ahead);
  Draft& draft = session.clocked(ahead.span_from(from));
  draft.said.amrap = true;
  if (ahead.take("ladder") || ladder_first) draft.said.ladder = true;
  if (times || off) {
    check_count(session, times.value_or(1), ahead.span_from(from));
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

namespace {

/// `emom`, `e3mom`, `e90s`, `every 2 min`, `otm`: the length of one turn.
std::optional<Duration> take_turn(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  if (ahead.take_any({"emom", "otm", "on the minute", "every minute on the minute", "every min on the min",
                      "each minute on the minute"})) {
    cursor = ahead;
    return base::minute;
  }
  if (ahead.at_word() && ahead.peek().text.size() > 2 && ahead.peek().text[0] == 'e' &&
      ahead.peek().text[1] >= '0' && ahead.peek().text[1] <= '9') {
    const std::string& word = ahead.peek().text;
    std::size_t at = 1;
    double number = 0;
    while (at < word.size() && word[at] >= '0' && word[at] <= '9' && at < 5)
      number = number * 10 + (word[at++] - '0');
    const std::string_view unit = std::string_view(word).substr(at);
    if (unit == "mom" || unit == "m" || unit == "min") {
      ahead.next();
      cursor = ahead;
      return Duration::from_si(number * 60);
    }
    if (unit == "s" || unit == "sec") {
      ahead.next();
      cursor = ahead;
      return Duration::from_si(number);
    }
    return std::nullopt;
  }
  // `E1:30 x 8`, `E2:00`: letters and digits part before a colon.
  if (ahead.at("e") && ahead.at_number(1) && ahead.glued(1))
    ahead.next();
  else if (!ahead.take("every") && !ahead.take("on every"))
    return std::nullopt;
  if (ahead.take_any({"minute on the minute", "min on the min", "minute", "min"})) {
    ahead.take_any({"on the minute", "on the min"});
    cursor = ahead;
    return base::minute;
  }
  if (ahead.take_any({"other minute", "2nd minute", "second minute"})) {
    cursor = ahead;
    return 2 * base::minute;
  }
  const auto time = take_time(ahead, session.remarks, Naked::Refused);
  if (!time) return std::nullopt;
  ahead.take_any({"on the minute", "mom"});
  cursor = ahead;
  return time;
}

struct Turns {
  std::optional<int> count = {};
  std::optional<Duration> whole = {};
};

/// `x 16`, `12`, `for 12 min`, `x 5 rounds`, `12 min`: how often, or how long.
Turns take_turns(Session& session, Cursor& cursor) {
  Turns turns;
  Cursor ahead = cursor;
  if (ahead.take_symbol(times_sign) || ahead.take("times")) {
    turns.count = ahead.take_count();
    if (!turns.count) return {};
    const bool minutes = ahead.take_any({"min", "mins", "minutes"}) ||
                         (ahead.at_symbol('\'') && ahead.glued(0) && ahead.take_symbol('\''));
    ahead.take_any({"rounds", "rds", "sets", "times"});
    if (minutes) turns = {.count = {}, .whole = *turns.count * base::minute};
    cursor = ahead;
    return turns;
  }
  const bool for_word = ahead.take("for") || ahead.take_symbol('-');
  Cursor number = ahead;
  if (for_word && number.take_count() && number.take_any({"rounds", "rds", "sets"})) {
    turns.count = ahead.take_count();
    cursor = number;
    return turns;
  }
  Cursor naked = ahead;
  const bool has_unit = take_time(naked, session.remarks, Naked::Refused).has_value();
  const auto whole = take_time(ahead, session.remarks, Naked::Minutes);
  if (!whole) return {};
  const bool amount =
      !has_unit && !for_word && (session.names.find(ahead) || ahead.at_any({"cal", "m", "cals", "reps"}));
  if (amount) return {};
  if (ahead.take_symbol(times_sign)) {
  }
  cursor = ahead;
  turns.whole = whole;
  return turns;
}

/// Where a duty first falls due: `(start at 1:00)`, `from 2:00`. Cuts the words off the cursor.
std::optional<Duration> first_of_duty(Session& session, Cursor& cursor) {
  constexpr std::size_t farthest = 60;  // marks
  for (std::size_t ahead = 0; ahead < farthest && cursor.position() + ahead < cursor.end(); ++ahead) {
    const std::size_t words = cursor.reach("start at", ahead) + cursor.reach("starting at", ahead) +
                              cursor.reach("first at", ahead) + cursor.reach("from", ahead);
    if (words == 0) continue;
    Cursor time = cursor.part(cursor.position() + ahead + words, cursor.end());
    const auto first = take_time(time, session.remarks, Naked::Minutes);
    if (!first) continue;
    std::size_t to = cursor.position() + ahead;
    if (to > cursor.position() && cursor.at_symbol('(', ahead - 1)) --to;
    cursor = cursor.part(cursor.position(), to);
    return first;
  }
  return std::nullopt;
}

bool another_clock_runs(Session& session) {
  const Draft& draft = session.draft();
  const bool clock = draft.said.amrap || draft.said.for_time || draft.said.for_distance ||
                     draft.said.max_effort || draft.block.rounds || draft.block.cap ||
                     (draft.clock && draft.has_work()) || !draft.block.team_sizes.empty() || draft.scheme ||
                     (draft.has_work() && draft.said.buy_in);
  const bool own_turns = draft.said.every || draft.block.work;
  return clock && !own_turns && !(session.line->after_blank && session.statement == session.line->first);
}

/// Every so often in somebody else's clock: what interrupts it.
void read_duty(Session& session, Cursor work, Duration turn) {
  const auto first = first_of_duty(session, work);
  std::vector<Entry> entries = read_entries(session, work);
  Draft& draft = session.draft();
  draft.interrupt_every = turn;
  draft.interrupt_first = first;
  draft.interrupt = std::move(entries);
}

/// `10 x 10 swings EMOM`: the sets of this line are the turns. Whether it was so.
bool sets_become_turns(Session& session, Duration turn) {
  Draft& draft = session.draft();
  const Entry* last = draft.last_entry();
  if (last == nullptr || last->line != session.line_index || !last->sets || !draft.said.sets) return false;
  Entry slot = *last;
  draft.said.sets = false;
  draft.said.every = true;
  draft.block.every = turn;
  draft.block.intervals = slot.sets;
  slot.sets.reset();
  draft.slots = {{std::move(slot)}};
  draft.sections.clear();
  return true;
}

}  // namespace

bool read_every(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const bool alternating = ahead.take_any({"alternating", "alternate"});
  // `12 min EMOM`
  std::optional<Duration> before;
  Cursor length = ahead;
  if (const auto whole = take_time(length, session.remarks, Naked::Refused)) {
    length.take_symbol('-');
    if (length.at_any({"emom", "otm", "on the minute"})) {
      before = whole;
      ahead = length;
    }
  }
  const auto turn = take_turn(session, ahead);
  if (!turn) return false;
  Turns turns = take_turns(session, ahead);
  if (before) turns.whole = before;
  Cursor work = ahead;
  while (work.take_symbol(':') || work.take_symbol('=') || work.take_symbol(',') || work.take("do") ||
         work.take_symbol('-')) {
  }
  if (!turns.count && !turns.whole && !work.done() && another_clock_runs(session)) {
    read_duty(session, work, *turn);
    cursor.next(cursor.end() - cursor.position());
    return true;
  }
  if (!turns.count && !turns.whole && work.done() && sets_become_turns(session, *turn)) {
    cursor = ahead;
    return true;
  }
  const domain::Span span = ahead.span_from(from);
  Draft& draft = session.clocked(span);
  draft.said.every = true;
  if (ahead.take_symbol(',') && !ahead.at_any({"alternating", "alternate"}))
    ahead = ahead.part(ahead.position() - 1, ahead.end());
  draft.said.alternating = ahead.take_any({"alternating", "alternate"}) || alternating;
  const Duration every = turn->si() > 0 ? *turn : base::minute;
  draft.block.every = every;
  if (turn->si() <= 0)
    session.remarks.add({"no-amount", span,
                         fmt::format("`{}`: a turn is longer than nothing", session.kept(span)),
                         "write how long a turn is"});
  if (turns.count) {
    check_count(session, *turns.count, span);
    draft.block.intervals = std::max(1, *turns.count);
  } else if (turns.whole && turn->si() > 0) {
    draft.block.intervals = static_cast<int>(std::min(1e6, std::floor(*turns.whole / every + 0.5)));
  }
  cursor = ahead;
  return true;
}

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

bool read_for_time(Session& session, Cursor& cursor) {
  const std::size_t from = cursor.position();
  const bool each =
      cursor.take_any({"each for time", "each round for time", "each one for time", "each timed"});
  if (!each && !cursor.take_any({"for time", "chipper", "as fast as possible", "afap", "for times"}))
    return false;
  cursor.take("of");
  Draft* draft = &session.draft();
  const Entry* last = draft->last_entry();
  const bool this_line = last != nullptr && last->line == session.line_index;
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

/// `11:00 on the clock`, `18 min`, `in 15'`, `4:00`: how long the piece runs.
bool read_bare_clock(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const bool in = ahead.take_any({"in", "for", "within"});
  const auto time = take_time(ahead, session.remarks, in ? Naked::Minutes : Naked::Refused);
  if (!time) return false;
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
