#include <fmt/format.h>

#include <algorithm>

#include "board/session.hpp"

/// Counts: rounds, sets, lists, stations, laps, work and rest, repeats.
namespace repwright::board {
namespace {

using base::Duration;

bool take_rounds_word(Cursor& cursor) {
  return cursor.take_any({"rounds", "round", "rds", "rd", "rnds", "rnd"});
}

void check_rounds(Session& session, int count, const domain::Span& span) {
  if (count <= 0)
    session.remarks.add({"no-amount", span, fmt::format("`{}`: rounds begin at 1", session.kept(span)),
                         "write how many rounds"});
  if (count > 200)
    session.remarks.add({"too-many", span,
                         fmt::format("`{}`: no session holds more than 200 rounds", session.kept(span)),
                         "write 1 to 200 rounds"});
}

/// Whether work follows on this line behind the cursor.
bool work_follows(const Cursor& cursor) {
  for (std::size_t i = 0; i < 60 && cursor.position() + i < cursor.end(); ++i)
    if (cursor.at_word(i) && !cursor.at_any({"of", "for", "time"}, i)) return true;
  return false;
}

/// Whether the piece ends with this line.
bool nothing_below(const Session& session) {
  const auto next = static_cast<std::size_t>(session.line_index) + 1;
  return next >= session.source.lines.size() || session.source.lines[next].after_blank;
}

Section& open_section(Session& session, Draft& draft, Role role, std::optional<int> rounds) {
  const bool reuse = !draft.sections.empty() && draft.sections.back().entries.empty();
  if (!reuse) draft.sections.emplace_back();
  Section& section = draft.sections.back();
  section.role = role;
  section.rounds = rounds;
  section.line = session.line_index;
  return section;
}

/// `5 rounds`, read: how many, from where to where, and whether for time was said with them.
struct RoundsSaid {
  int count = 1;
  bool for_time = false;
  std::size_t from = 0;
};

/// Rounds that say again, or say more of, what the piece has said; whether they did.
bool rounds_of_piece(Session& session, Draft& draft, const Cursor& behind, const RoundsSaid& said) {
  const bool first_below_blank = session.line->after_blank && session.statement == session.line->first;
  const bool new_piece = said.for_time || first_below_blank;
  // '(4 rounds)' of an EMOM says the same again
  if ((draft.said.every && !new_piece) || session.bracketed) return true;
  if (draft.said.stations && !new_piece) {
    draft.block.laps = said.count;
    return true;
  }
  if (!new_piece && (draft.block.work || draft.block.rest_rule)) {
    if (!draft.block.rounds) draft.block.rounds = said.count;
    return true;
  }
  if (draft.has_work() && !draft.block.rounds && !draft.said.amrap && !work_follows(behind) &&
      nothing_below(session) && !draft.said.sets) {
    draft.block.rounds = said.count;  // `..., 5 rounds` behind the work
    draft.said.for_time |= said.for_time;
    return true;
  }
  return false;
}

/// Rounds of the work that follows them: of a part of the piece, of all of it, or of a new piece.
void rounds_of_what_follows(Session& session, Draft& draft, const Cursor& behind, const RoundsSaid& said) {
  const bool first_below_blank = session.line->after_blank && session.statement == session.line->first;
  const bool parts_allowed = !draft.said.sets && !draft.said.superset && !draft.said.build &&
                             !first_below_blank && !draft.block.work && !draft.said.accumulate &&
                             !draft.said.max_effort && !draft.said.rest;
  if (draft.has_work() && parts_allowed && (!draft.block.rounds || session.then) &&
      !draft.said.rounds_label) {
    for (Section& section : draft.sections)
      if (section.role == Role::Plain) section.role = Role::Once;
    Section& section = open_section(session, draft, Role::Rounds, said.count);
    section.this_line_only = work_follows(behind);
    draft.said.for_time |= said.for_time;
    if (!session.then && !draft.said.buy_in)
      session.remarks.add({"round-scope", behind.span_from(said.from),
                           fmt::format("`{}` was read for {} only", session.kept(behind.span_from(said.from)),
                                       section.this_line_only ? "the work of its line" : "the work below"),
                           "put the rounds first, or say then, buy-in and cash-out"});
  } else if (!draft.has_work() && !draft.said.amrap && parts_allowed) {
    draft.block.rounds = said.count;
    draft.said.for_time |= said.for_time;
    if (draft.span.line == 0) draft.span = behind.span_from(said.from);
  } else if (draft.said.amrap && !draft.has_work()) {
    open_section(session, draft, Role::Rounds, said.count);
  } else {
    Draft& fresh = session.fresh(behind.span_from(said.from));
    fresh.block.rounds = said.count;
    fresh.said.for_time = said.for_time;
  }
}

}  // namespace

bool read_rounds(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  ahead.take_symbol(times_sign);
  const auto count = ahead.take_count();
  if (!count) return false;
  ahead.take_symbol(times_sign);
  const bool rft = ahead.take_any({"rft", "rounds for time", "rds for time", "round for time"});
  if (!rft && !take_rounds_word(ahead)) return false;
  const bool for_time = rft || ahead.take_any({"for time"});
  ahead.take("of");
  check_rounds(session, *count, ahead.span_from(from));
  const RoundsSaid said{.count = std::max(1, *count), .for_time = for_time, .from = from};
  Draft& draft = session.draft();
  if (!rounds_of_piece(session, draft, ahead, said)) rounds_of_what_follows(session, draft, ahead, said);
  cursor = ahead;
  return true;
}

bool read_scheme(Session& session, Cursor& cursor) {
  if (!cursor.at_number()) return false;
  Cursor ahead = cursor;
  auto numbers = take_numbers(ahead, session.remarks);
  if (!numbers || numbers->joined != Joined::Dashes || (numbers->values.size() < 3 && !numbers->open))
    return false;
  ahead.take_any({"reps", "of", "reps of", "each"});
  if (session.names.find(ahead)) {
    // `21-15-9 thrusters, pull-ups`: the list holds for the names without amounts, too.
    Draft& draft = session.clocked(numbers->span);
    draft.scheme = std::move(numbers);
    draft.said.ladder |= draft.scheme->open;
    cursor = ahead;
    return true;
  }
  const bool lists = ahead.done() || ahead.at("for time") || ahead.at_symbol(':') || ahead.at("for") ||
                     ahead.at_symbol(',') || ahead.at_symbol('(');
  if (!lists || ahead.at_symbol('@')) return false;
  Entry* last = session.draft().last_entry();
  if (last != nullptr && !last->amount && last->line == session.line_index) return false;
  Draft& draft = session.draft().said.ladder && !session.draft().has_work() ? session.draft()
                 : session.draft().has_work()                               ? session.fresh(numbers->span)
                                                                            : session.draft();
  if (draft.span.line == 0) draft.span = numbers->span;
  draft.said.ladder |= numbers->open;
  draft.scheme = std::move(numbers);
  cursor = ahead;
  return true;
}

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
  const bool off = ahead.take_any({"off", "rest", "easy", "of rest"});
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

bool read_stations(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  ahead.take_symbol(times_sign);
  if (ahead.at("stations") || ahead.at("circuit")) {
    ahead.next();
    session.clocked(ahead.span_from(from)).said.stations = true;
    cursor = ahead;
    return true;
  }
  Cursor count = ahead;
  if (const auto number = count.take_count(); number && count.take_any({"stations", "station"})) {
    Draft& draft = session.draft();
    if (draft.span.line == 0) draft.span = count.span_from(from);
    draft.said.stations = true;
    draft.stations = number;
    cursor = count;
    return true;
  }
  count = ahead;
  if (const auto number = count.take_count(); number && count.take_any({"laps", "lap"}) &&
                                              (session.draft().said.stations || session.draft().block.work)) {
    session.draft().block.laps = number;
    cursor = count;
    return true;
  }
  Cursor minutes = ahead;
  const auto each = take_time(minutes, session.remarks, Naked::Refused);
  if (!each || !minutes.take_any({"each station", "at each station", "per station", "each", "a station",
                                  "at each", "on each", "stations"}))
    return false;
  const bool later = minutes.before().text == "station" || minutes.before().text == "stations";
  if (!later && !session.draft().said.stations) return false;
  Draft& draft = session.draft().said.stations ? session.draft() : session.clocked(minutes.span_from(from));
  if (draft.span.line == 0) draft.span = minutes.span_from(from);
  draft.said.stations = true;
  draft.block.work = each;
  cursor = minutes;
  return true;
}

namespace {

bool repeats_a_distance(Session& session, const Cursor& cursor, const Entry& probe) {
  if (!probe.amount || !probe.amount->unit) return false;
  const domain::Unit unit = *probe.amount->unit;
  const bool distance = unit == domain::Unit::Metres || unit == domain::Unit::Kilocalories;
  if (!distance || session.chapter().part == Part::Strength || session.draft().said.superset ||
      session.letter != 0)
    return false;
  const auto named = session.names.find(cursor);
  if (!named) return cursor.done() || !cursor.at_word();
  const domain::Movement* movement = session.names.movement(named->meaning.movements.front());
  return movement != nullptr && (movement->category == "run" || movement->category == "ergometer" ||
                                 unit == domain::Unit::Kilocalories || named->written == "row");
}

/// `4 x 4 min @ 10k pace`, `5 x 3 min row`: work of a time, not a hold in sets.
bool repeats_a_time(Session& session, const Cursor& cursor, const Entry& probe) {
  if (!probe.amount || probe.amount->unit != domain::Unit::Seconds || !probe.amount->plain()) return false;
  if (session.chapter().part == Part::Strength || session.draft().said.superset || session.letter != 0)
    return false;
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

bool read_set_words(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  if (ahead.take_any({"superset with", "superset w", "supersetted with", "ss with", "paired with"})) {
    ahead.take_symbol('/');
    Draft& draft = session.draft();
    draft.said.superset = true;
    if (Entry* last = draft.last_entry()) last->superset_with_next = true;
    cursor = ahead;
    return true;
  }
  if ((session.draft().said.sets || session.draft().said.superset) && session.draft().has_work() &&
      cursor.take_any({"build", "building", "build up", "increasing", "add weight", "ascending",
                       "add weight each set", "heavier each set", "go up each set"})) {
    session.draft().said.load_scored = true;
    return true;
  }
  if (ahead.take_any({"superset", "supersets", "giant set"})) {
    session.clocked(ahead.span_from(from)).said.superset = true;
    cursor = ahead;
    return true;
  }
  const auto count = ahead.take_count();
  if (!count || !ahead.take_any({"sets", "set"})) return false;
  check_rounds(session, *count, ahead.span_from(from));
  ahead.take("of");
  const std::size_t max_from = ahead.position();
  const bool max = ahead.take_any({"max reps", "to failure", "max effort"}) ||
                   (ahead.at("max") && (ahead.at_symbol(':', 1) || ahead.position() + 1 == ahead.end()) &&
                    ahead.take("max"));
  const Numbers as_many{.values = {domain::Max{}}, .span = ahead.span_of(max_from, ahead.position())};
  Draft* draft = &session.draft();
  if (draft->said.superset && !draft->has_work()) {
    draft->block.sets = count;
    cursor = ahead;
    return true;
  }
  Entry* last = draft->last_entry();
  if (last != nullptr && !last->sets && last->line == session.line_index && !draft->block.sets) {
    last->sets = count;
    if (max) last->amount = as_many;
    draft->said.sets = true;
  } else {
    if (draft->has_work() || draft->has_clock() || draft->said.sets)
      draft = &session.fresh(ahead.span_from(from));
    if (draft->span.line == 0) draft->span = ahead.span_from(from);
    draft->block.sets = count;
    draft->said.sets = true;
    if (max) draft->scheme = as_many;
  }
  cursor = ahead;
  return true;
}

bool read_scope(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  if (ahead.take_any({"buy in", "buyin", "once", "to start", "start with"})) {
    Draft* draft = &session.draft();
    const bool below_blank = session.line->after_blank && session.statement == session.line->first;
    const bool apart = !draft->said.buy_in && !draft->said.for_time && !draft->block.rounds &&
                       !session.then && !(ahead.at_symbol(':') && draft->said.amrap);
    if (draft->has_work() && (below_blank || apart)) draft = &session.fresh(ahead.span_from(from));
    if (draft->span.line == 0) draft->span = ahead.span_from(from);
    draft->said.buy_in = true;
    open_section(session, *draft, Role::Once, std::nullopt);
    cursor = ahead;
    return true;
  }
  if (ahead.take_any({"cash out", "cashout", "finish with", "to finish"})) {
    Draft& draft = session.draft();
    draft.said.buy_in = true;
    open_section(session, draft, Role::Once, std::nullopt);
    cursor = ahead;
    return true;
  }
  if (ahead.at("rounds") && ahead.at_symbol(':', 1)) {
    Draft& draft = session.draft();
    draft.said.rounds_label = true;
    open_section(session, draft, Role::Rounds, std::nullopt);
    cursor.next(2);
    return true;
  }
  if (!ahead.take_any({"partition as you like", "any order", "in any order", "partition anyhow",
                       "your partition", "own partition", "partition as needed", "own order",
                       "your own order", "partition freely", "partition how you like",
                       "partitioned as you like"}))
    return false;
  Draft& draft = session.draft();
  if (ahead.at_symbol(':') || !draft.has_work()) {
    open_section(session, draft, Role::AnyOrder, std::nullopt);
    cursor = ahead;
    return true;
  }
  // The words stand behind the work that they free: that of this line.
  if (draft.sections.empty()) return false;  // the work stands in slots, which have an order
  Section& last = draft.sections.back();
  const auto first = std::ranges::find(last.entries, session.line_index, &Entry::line);
  if (first == last.entries.end() || last.role == Role::AnyOrder) {
    if (last.role == Role::Plain && session.statement == session.line->first) last.role = Role::AnyOrder;
    cursor = ahead;
    return true;
  }
  Section free{.role = Role::AnyOrder,
               .entries = {first, last.entries.end()},
               .this_line_only = true,
               .line = session.line_index};
  last.entries.erase(first, last.entries.end());
  if (last.entries.empty()) draft.sections.pop_back();
  draft.sections.push_back(std::move(free));
  cursor = ahead;
  return true;
}

namespace {

/// `)`, `.` or `:` behind a label, but not the `:` of a clock.
bool take_label_end(Cursor& cursor) {
  if (cursor.at_symbol(':') && cursor.glued(1) && cursor.at_number(1)) return false;
  if (!cursor.at_symbol(')') && !cursor.at_symbol(':') && !cursor.at_symbol('.')) return false;
  cursor.next();
  return true;
}

/// A slot of its own for what follows.
void open_slot(Draft& draft) {
  draft.slots.emplace_back();
  draft.slot = static_cast<int>(draft.slots.size()) - 1;
}

/// `min 3:`
bool read_minute_label(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  if (!ahead.take_any({"min", "minute", "mins", "minutes"}) || !ahead.at_number()) return false;
  const int minute = static_cast<int>(std::min(1000.0, ahead.number()));
  if (!take_label_end(ahead) && !ahead.take_symbol('-')) return false;
  const bool on_the_minute = session.draft().said.every;
  Draft& draft = on_the_minute ? session.draft() : session.clocked(ahead.span_from(cursor.position()));
  draft.said.every = true;
  if (!draft.block.every) draft.block.every = base::minute;
  open_slot(draft);
  draft.minutes.push_back(minute);
  cursor = ahead;
  return true;
}

/// `odd:`, `even minutes -`
bool read_parity_label(Session& session, Cursor& cursor) {
  Draft& draft = session.draft();
  if (!draft.said.every) return false;
  Cursor ahead = cursor;
  const bool odd = ahead.at_word() && ahead.peek().text.starts_with("odd");
  if (!ahead.take_any({"odd minutes", "even minutes", "odd min", "even min", "odd", "even", "odds", "evens"}))
    return false;
  if (!take_label_end(ahead) && !ahead.take_symbol('-') && !ahead.take_symbol('=')) return false;
  const bool first = odd == session.house.minute_one_is_odd;
  if (draft.slots.size() < 2) draft.slots.resize(2);
  draft.slot = first ? 0 : 1;
  cursor = ahead;
  return true;
}

/// `a)`, `b:`
bool read_letter_label(Draft& draft, Cursor& cursor) {
  const bool letter = cursor.at_word() && cursor.peek().text.size() == 1 && cursor.peek().text[0] <= 'h';
  if (!letter) return false;
  if (!cursor.at_symbol(')', 1) && (!cursor.at_symbol(':', 1) || cursor.at_symbol('/', 1))) return false;
  cursor.next(2);
  open_slot(draft);
  return true;
}

/// `3)`, `station 3:`, and the bare number of a station where the next one is due.
bool read_number_label(const Session& session, Draft& draft, Cursor& cursor) {
  Cursor ahead = cursor;
  ahead.take_symbol('(');
  ahead.take("station");
  if (!ahead.at_number()) return false;
  const bool due = ahead.number() == static_cast<double>(draft.slots.size() + 1) && !ahead.glued(0);
  // Behind a label of its own a number is an amount: ` 5) 6 box step-ups`.
  const bool labelled = !draft.slots.empty() && draft.slots.back().empty();
  const bool in_line =
      draft.said.stations && due && !labelled && ahead.at_word() &&
      !ahead.at_any({"min", "mins", "s", "m", "cal", "rounds", "rds", "rft", "laps", "stations", "sec"});
  const bool on_line = session.statement == session.line->first && due && ahead.at_number();
  if (!take_label_end(ahead) && !in_line && !on_line) return false;
  open_slot(draft);
  cursor = ahead;
  return true;
}

}  // namespace

bool read_slot_label(Session& session, Cursor& cursor) {
  if (read_minute_label(session, cursor) || read_parity_label(session, cursor)) return true;
  const Said& now = session.draft().said;
  if (!now.every && !now.stations) {
    const bool first_station = cursor.at("station") && cursor.at_number(1) && cursor.at_symbol(':', 2) &&
                               session.statement == session.line->first;
    if (!first_station) return false;
    session.clocked(cursor.span_of(cursor.position(), cursor.position() + 1)).said.stations = true;
  }
  return read_letter_label(session.draft(), cursor) || read_number_label(session, session.draft(), cursor);
}

bool read_same_again(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  if (!ahead.take_any({"same rounds", "same again", "same piece", "repeat piece", "repeat the piece",
                       "same as above", "same work", "repeat", "same", "same rounds again",
                       "same piece again", "same amrap", "again"}))
    return false;
  ahead.take_any({"again", "rounds", "piece", "as piece a", "as a", "as above", "of a"});
  if (ahead.at_word() && !ahead.at_any({"as", "in", "with", "for"})) return false;
  const Draft* source = nullptr;
  for (const Chapter& chapter : session.chapters)
    for (const Draft& draft : chapter.drafts)
      if (draft.has_work() && &draft != &session.draft()) source = &draft;
  if (source == nullptr) {
    session.remarks.add({"nothing-to-repeat", ahead.span_from(from),
                         fmt::format("`{}`: no piece stands above", session.kept(ahead.span_from(from))),
                         "write the work out"});
    cursor = ahead;
    return true;
  }
  Draft copy = *source;
  Draft& now = session.draft();
  const bool own_clock = now.has_clock() || now.clock || now.block.rounds;
  if (now.has_work()) {
    Draft& next = session.fresh(ahead.span_from(from));
    next = std::move(copy);
  } else if (own_clock) {
    now.sections = std::move(copy.sections);
    now.slots = std::move(copy.slots);
    now.scheme = copy.scheme;
    if (!now.block.rounds && !now.said.amrap) now.block.rounds = copy.block.rounds;
  } else {
    const auto levels = now.block.levels;
    now = std::move(copy);
    if (!levels.empty()) now.block.levels = levels;
  }
  session.draft().texts.clear();
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
