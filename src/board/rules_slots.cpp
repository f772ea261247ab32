#include <algorithm>
#include <array>
#include <utility>

#include "board/clocks_in_row.hpp"
#include "board/rule_parts.hpp"

/// Stations and the labels of slots: `min 2:`, `odd:`, `b)`, `station 3:`.
namespace repwright::board {
namespace {

/// `)`, `.` or `:` behind a label, but not the `:` of a clock.
bool take_label_end(Cursor& cursor) {
  if (cursor.at_symbol(':') && cursor.glued(1) && cursor.at_number(1)) return false;
  const bool end = cursor.at_symbol(')') || cursor.at_symbol(':') || cursor.at_symbol('.') ||
                   cursor.at_symbol(arrow_sign) || cursor.at_symbol('=');
  if (end) cursor.next();
  return end;
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
  const bool amount_follows = ahead.at_number() && !ahead.glued(0) &&
                              session.names.find(ahead.part(ahead.position() + 1, ahead.end()));
  if (!take_label_end(ahead) && !ahead.take_symbol('-') && !amount_follows) return false;
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

/// `1 - 15 cal ski` above `2 - 12 squats`: a label and a dash, where the labels count on.
bool take_dashed_label(const Session& session, const Draft& draft, Cursor& cursor) {
  const auto dashed = [](const Cursor& line, double number) {
    return line.at_number() && line.peek().value == number && line.at_symbol('-', 1) && !line.glued(1) &&
           !line.glued(2);
  };
  const auto due = static_cast<double>(draft.slots.size() + 1);
  if (session.statement != session.line->first || !dashed(cursor, due)) return false;
  const auto next = static_cast<std::size_t>(session.line_index) + 1;
  const bool more =
      next < session.source.lines.size() &&
      dashed(Cursor(session.source, session.source.lines[next].first, session.source.lines[next].last),
             due + 1);
  if (due < 2 && !more) return false;
  cursor.next(2);
  return true;
}

/// `3)`, `station 3:`, and the bare number of a station where the next one is due.
bool read_number_label(const Session& session, Draft& draft, Cursor& cursor) {
  Cursor ahead = cursor;
  if (take_dashed_label(session, draft, ahead)) {
    open_slot(draft);
    cursor = ahead;
    return true;
  }
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

/// `1:`, `2)` below clocks in a row: the work of the first, of the second.
bool read_clock_label(Session& session, Cursor& cursor) {
  if (!cursor.at_number() || session.statement != session.line->first) return false;
  const int clocks = clocks_waiting(session.chapter()) + 1;
  Cursor ahead = cursor;
  const auto number = ahead.take_count();
  if (clocks < 2 || !number || *number < 1 || *number > clocks || !take_label_end(ahead)) return false;
  session.draft().part = *number;
  cursor = ahead;
  return true;
}

/// `first`, `2nd`, `minute 3`: which minute is meant; 0 if none is.
int take_ordinal(Cursor& cursor) {
  constexpr std::array<std::string_view, 6> ordinals{"first", "second", "third", "fourth", "fifth", "sixth"};
  for (std::size_t i = 0; i < ordinals.size(); ++i)
    if (cursor.take(ordinals[i])) return static_cast<int>(i) + 1;
  Cursor ahead = cursor;
  const bool named = ahead.take_any({"minute", "min"});
  const auto number = ahead.take_count();
  const bool ordinal = number && (ahead.take_any({"st", "nd", "rd", "th"}) || named);
  if (!ordinal || *number < 1) return 0;
  cursor = ahead;
  return *number;
}

/// `1 burpee in the first minute`, `2 in the second`: an amount, the marks of a name and which minute.
struct OfMinute {
  Numbers amount;
  Cursor name;
  int minute = 0;
  bool minute_said = false;
};

std::optional<OfMinute> take_of_minute(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  Remarks silent;
  auto amount = take_numbers(ahead, silent);
  if (!amount || !amount->plain()) return std::nullopt;
  const std::size_t name = ahead.position();
  if (const auto named = session.names.find(ahead)) ahead.next(named->marks);
  const std::size_t name_end = ahead.position();
  if (!ahead.take_any({"in", "on", "in the", "on the", "the"})) return std::nullopt;
  const bool minute_before = ahead.at_any({"minute", "min"});
  const int minute = take_ordinal(ahead);
  if (minute == 0) return std::nullopt;
  const bool minute_behind = ahead.take_any({"minute", "min"});
  cursor = ahead;
  return OfMinute{.amount = *std::move(amount),
                  .name = cursor.part(name, name_end),
                  .minute = minute,
                  .minute_said = minute_before || minute_behind};
}

}  // namespace

bool read_minutes_that_grow(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  auto first = take_of_minute(session, ahead);
  if (!first || first->minute != 1 || !(first->minute_said || session.draft().said.every)) return false;
  std::vector<double> amounts{first->amount.plain().value_or(0)};
  Cursor more = ahead;
  while (more.take_symbol(',') || more.take("then") || more.take("and")) {
    const auto next = take_of_minute(session, more);
    if (!next || next->minute != static_cast<int>(amounts.size()) + 1) break;
    amounts.push_back(next->amount.plain().value_or(0));
    ahead = more;
  }
  const double step = amounts.size() < 2 ? 0 : amounts[1] - amounts[0];
  for (std::size_t i = 1; i < amounts.size(); ++i)
    if (amounts[i] - amounts[i - 1] != step) return false;
  if (step == 0) return false;
  Draft& draft = session.draft().said.every ? session.draft() : session.clocked(ahead.span_from(from));
  draft.said.every = draft.said.climbing = true;
  if (!draft.block.every) draft.block.every = base::minute;
  Numbers grows = std::move(first->amount);
  grows.values = {amounts[0], amounts[1]};
  grows.joined = Joined::Dashes;
  grows.open = true;
  grows.span = ahead.span_from(from);
  cursor = ahead;
  if (first->name.done()) {  // the work stands below
    draft.scheme = std::move(grows);
    return true;
  }
  for (Entry& entry : read_entries(session, first->name)) {
    entry.amount = grows;
    place_entry(session, std::move(entry));
  }
  return true;
}

bool read_stations(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  ahead.take_symbol(times_sign);
  if (ahead.at("stations") || ahead.at("circuit")) {
    ahead.next();
    Cursor of = ahead;  // `circuit of 5 stations`
    if (of.take("of") && of.take_count() && of.at_any({"stations", "station"})) ahead.take("of");
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

bool read_slot_label(Session& session, Cursor& cursor) {
  if (read_minute_label(session, cursor) || read_parity_label(session, cursor)) return true;
  const Said& now = session.draft().said;
  if (read_clock_label(session, cursor)) return true;
  if (!now.every && !now.stations) {
    const bool first_station = cursor.at("station") && cursor.at_number(1) && cursor.at_symbol(':', 2) &&
                               session.statement == session.line->first;
    if (!first_station) return false;
    session.clocked(cursor.span_of(cursor.position(), cursor.position() + 1)).said.stations = true;
  }
  return read_letter_label(session.draft(), cursor) || read_number_label(session, session.draft(), cursor);
}

}  // namespace repwright::board
