#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "board/rule_parts.hpp"

/// Every minute and every so often: turns of a piece, duties within one.
namespace repwright::board {
using base::Duration;

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
  bool alternating = ahead.take_any({"alternating", "alternate", "alt"});
  // `12 min EMOM`
  std::optional<Duration> before;
  Cursor length = ahead;
  if (const auto whole = take_time(length, session.remarks, Naked::Refused)) {
    length.take_symbol('-');
    const bool in_turn = length.take_any({"alternating", "alternate", "alt"});
    if (length.at_any({"emom", "otm", "on the minute"})) {
      alternating |= in_turn;
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
  if (ahead.at_symbol('-') && ahead.at_any({"alternating", "alternate", "alt"}, 1)) ahead.next();
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
    check_rounds(session, *turns.count, span);
    draft.block.intervals = std::max(1, *turns.count);
  } else if (turns.whole && turn->si() > 0) {
    draft.block.intervals = static_cast<int>(std::min(1e6, std::floor(*turns.whole / every + 0.5)));
  }
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
