#include <fmt/format.h>

#include "board/rule_parts.hpp"

/// Work and rest by the clock, and what repeats: a distance, a time, a group.
namespace repwright::board {
using base::Duration;

namespace {

struct WorkRest {
  std::optional<int> times;
  Duration work, rest;
};

bool multiple_of_five(Duration time) {
  return static_cast<int>(time.si()) % 5 == 0;
}

/// `8x 20s on/10s off`, `40/20`, `:30/:30`, `40 on 20 off`, `work 40 s, rest 20 s`.
std::optional<WorkRest> take_work_rest(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  ahead.take("intervals");
  ahead.take_symbol(':');
  WorkRest read;
  if (ahead.at_number() && ahead.at_symbol(times_sign, 1) &&
      (ahead.at_number(2) || ahead.at_symbol(':', 2))) {
    read.times = ahead.take_count();
    ahead.next();
  } else if (ahead.at_number()) {
    Cursor rounds = ahead;
    const auto count = rounds.take_count();
    if (count && take_rounds_word(rounds) &&
        (rounds.take("of") || rounds.take_symbol(':') || rounds.take_symbol(','))) {
      read.times = count;
      ahead = rounds;
    }
  }
  bool said = ahead.take("work");
  Cursor unit = ahead;
  const bool first_unit = take_time(unit, session.remarks, Naked::Refused).has_value();
  const auto work = take_time(ahead, session.remarks, Naked::Seconds);
  if (!work) return std::nullopt;
  said |= ahead.take_any({"on", "work", "hard", "of work"});
  if (!ahead.take_symbol('/') && !ahead.take_symbol(',') && !ahead.take_symbol('-') && !said)
    return std::nullopt;
  const bool rest_first = ahead.take("rest");
  said |= rest_first;
  Cursor second = ahead;
  const bool second_unit = take_time(second, session.remarks, Naked::Refused).has_value();
  const auto rest = take_time(ahead, session.remarks, Naked::Seconds);
  if (!rest) return std::nullopt;
  const bool off = ahead.take_any(
      {"off", "rest", "easy", "of rest", "rotate", "to rotate", "rotation", "change", "to change"});
  if (ahead.at("between") || ahead.at("cal") || ahead.at("m") || ahead.at("kg")) return std::nullopt;
  if (rest_first && !read.times && !cursor.at("work") && !second_unit && !off) return std::nullopt;
  bool counted = false;
  Cursor more = ahead;
  if (more.take_symbol(times_sign) && more.at_number()) counted = true;
  const bool plain = !first_unit && !second_unit && !off && !said;
  if (plain && !counted && !read.times && !session.draft().stations && !session.draft().said.stations)
    return std::nullopt;
  if (plain && (!multiple_of_five(*work) || !multiple_of_five(*rest) || work->si() < 10)) return std::nullopt;
  if (!plain && !off && !said && !(first_unit && second_unit)) return std::nullopt;
  if (counted && !read.times) {
    Cursor count = more;
    const auto times = count.take_count();
    const bool other = count.at_any({"stations", "station", "laps", "lap"});
    if (times && !other) {
      take_rounds_word(count);
      count.take_any({"times", "sets", "intervals"});
      read.times = times;
      ahead = count;
    }
  }
  read.work = *work;
  read.rest = *rest;
  cursor = ahead;
  return read;
}

/// Inside a superset or behind a letter `3 x 400 m` is a set of it; below a blank line the superset is over.
bool belongs_to_superset(Session& session) {
  return (session.draft().said.superset && !session.line->after_blank) || session.letter != 0;
}

bool repeats_a_distance(Session& session, const Cursor& cursor, const Entry& probe) {
  if (!probe.amount || !probe.amount->unit) return false;
  const domain::Unit unit = *probe.amount->unit;
  const bool distance = unit == domain::Unit::Metres || unit == domain::Unit::Kilocalories;
  if (!distance || session.chapter().part == Part::Strength || belongs_to_superset(session)) return false;
  const auto named = session.names.find(cursor);
  if (!named) return cursor.done() || !cursor.at_word();
  const domain::Movement* movement = session.names.movement(named->meaning.movements.front());
  return movement != nullptr && (movement->category == "run" || movement->category == "ergometer" ||
                                 unit == domain::Unit::Kilocalories || named->written == "row");
}

/// `4 x 4 min @ 10k pace`, `5 x 3 min row`: work of a time, not a hold in sets.
bool repeats_a_time(Session& session, const Cursor& cursor, const Entry& probe) {
  if (!probe.amount || probe.amount->unit != domain::Unit::Seconds || !probe.amount->plain()) return false;
  if (session.chapter().part == Part::Strength || belongs_to_superset(session)) return false;
  if (cursor.at_symbol('@') && (cursor.at_any({"easy", "talk", "race", "threshold", "steady"}, 1) ||
                                (cursor.at_number(1) && cursor.at_any({"k", "km"}, 2))))
    return true;
  if (cursor.at("max")) return true;
  const auto named = session.names.find(cursor);
  const domain::Movement* movement =
      named ? session.names.movement(named->meaning.movements.front()) : nullptr;
  return movement != nullptr && (movement->category == "run" || movement->category == "ergometer");
}

}  // namespace

bool read_work_rest(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const auto read = take_work_rest(session, ahead);
  if (!read) return false;
  Draft& draft = session.draft().said.stations && !session.draft().block.work
                     ? session.draft()
                     : session.clocked(ahead.span_from(from));
  if (draft.span.line == 0) draft.span = ahead.span_from(from);
  draft.block.work = read->work;
  draft.block.rest = read->rest;
  if (read->times) {
    check_rounds(session, *read->times, ahead.span_from(from));
    draft.block.rounds = read->times;
    draft.times_of_work = read->times;
  }
  cursor = ahead;
  return true;
}

/// `6 x 400m`: the count goes to the piece, the distance stays for the item rule.
bool read_repeats(Session& session, Cursor& cursor) {
  if (!cursor.at_number() || !cursor.at_symbol(times_sign, 1)) return false;
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const auto count = ahead.take_count();
  ahead.next();
  if (!count) return false;
  Cursor amount = ahead;
  Entry probe;
  probe.amount = take_numbers(amount, session.remarks);
  if (session.draft().said.relay && probe.amount) {
    session.draft().block.turns_each = count;
    cursor = ahead;
    return true;
  }
  if (probe.amount && repeats_a_time(session, amount, probe)) {
    Draft& draft = session.clocked(amount.span_from(from));
    draft.block.rounds = count;
    draft.block.work = base::Duration::from_si(probe.amount->plain().value_or(0));
    check_rounds(session, *count, amount.span_from(from));
    if (amount.at_symbol('@')) {
      Entry entry;
      entry.line = session.line_index;
      entry.item.movement = domain::MovementId{"run"};
      while (read_detail(session, amount, entry)) {
      }
      entry.span = amount.span_from(from);
      place_entry(session, std::move(entry));
    }
    cursor = amount;
    return true;
  }
  if (!repeats_a_distance(session, amount, probe)) return false;
  if (session.draft().said.relay || session.draft().said.every) return false;
  check_rounds(session, *count, ahead.span_from(from));
  Draft& draft = session.clocked(ahead.span_from(from));
  draft.block.rounds = count;
  draft.said.repeats = true;
  cursor = ahead;
  return true;
}

/// `4 x (100m run + 6 burpees) each`: turns of a relay, or a group that repeats.
bool read_group(Session& session, Cursor& cursor) {
  if (!cursor.at_number() || !cursor.at_symbol(times_sign, 1) || !cursor.at_symbol('(', 2)) return false;
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const auto count = ahead.take_count();
  ahead.next();
  if (!count) return false;
  check_rounds(session, *count, ahead.span_from(from));
  const std::size_t close = ahead.closing();
  Cursor inside = ahead.part(ahead.position() + 1, close);
  ahead.next(close - ahead.position() + 1);
  const bool relay = session.draft().said.relay;
  Draft& draft = relay ? session.draft() : session.clocked(ahead.span_from(from));
  if (relay) {
    draft.block.turns_each = count;
    ahead.take("each");
  } else {
    draft.block.rounds = count;
    draft.said.repeats = ahead.at_symbol(',') || ahead.at("rest") || ahead.at("with");
  }
  read_statements(session, inside);
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
