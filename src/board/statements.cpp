#include <array>

#include "board/session.hpp"

namespace repwright::board {
namespace {

/// The rules in the order in which they are tried; the first that takes something wins.
constexpr std::array<Rule, 40> rules{read_minutes_that_grow,
                                     read_slot_label,
                                     read_inline_heading,
                                     read_failing,
                                     read_odd_team,
                                     read_cap,
                                     read_heats,
                                     read_intent,
                                     read_carried_words,
                                     read_start,
                                     read_penalty,
                                     read_score,
                                     read_scope,
                                     read_every,
                                     read_amrap,
                                     read_ladder,
                                     read_work_rest,
                                     read_stations,
                                     read_rest,
                                     read_partners,
                                     read_people,
                                     read_levels,
                                     read_build,
                                     read_accumulate,
                                     read_for_distance,
                                     read_set_words,
                                     read_loads_behind,
                                     read_for_time,
                                     read_rounds,
                                     read_group,
                                     read_repeats,
                                     read_scheme,
                                     read_same_count,
                                     read_same_again,
                                     read_bare_clock,
                                     read_bare_numbers,
                                     read_pace_words,
                                     read_second_station_line,
                                     read_item,
                                     read_details};

/// A mark between statements, and what it says of the next one.
bool take_separator(Session& session, Cursor& cursor) {
  const bool apart = cursor.peek().spaced;
  if (cursor.take_any({"then", "into", "followed by", "straight into", "and then"}) ||
      cursor.take_symbol(arrow_sign)) {
    session.then = session.new_slot = true;
    session.arrow = true;
    return true;
  }
  if (cursor.at_symbol('>') && !cursor.at_any({"last"}, 1)) {
    cursor.next();
    session.new_slot = true;
    return true;
  }
  if (cursor.take_symbol('+') || cursor.take_symbol('&') || cursor.take("and") || cursor.take("plus")) {
    session.plus = true;
    session.new_slot = false;
    return true;
  }
  if (cursor.at_symbol('-') && !(cursor.at_number(1) && !apart && cursor.glued(1))) {
    cursor.next();
    session.new_slot = true;
    return true;
  }
  for (const char name : {',', ';', '/', '|', bullet_sign}) {
    if (!cursor.take_symbol(name)) continue;
    session.new_slot = true;
    return true;
  }
  for (const char name : {':', '.', '=', '!', ')', ellipsis_sign, '*', '\''})
    if ((name != ':' || !(cursor.at_number(1) && cursor.glued(1))) && (name != '*' || !cursor.at_number(1)) &&
        cursor.take_symbol(name)) {
      if (name == ellipsis_sign) session.draft().said.climbing = true;
      return true;
    }
  return false;
}

/// Words that no rule knows, up to the next mark that parts statements.
void skip_unread(Session& session, Cursor& cursor) {
  const std::size_t from = cursor.position();
  cursor.next();
  while (!cursor.done() && !(cursor.at_symbol(times_sign) && cursor.at_number(1)) && !cursor.at_symbol(',') &&
         !cursor.at_symbol(';') && !cursor.at_symbol(arrow_sign) && !cursor.at("then") &&
         !cursor.at_symbol('(') && !(cursor.at_symbol(':') && !cursor.glued(1)) &&
         !(cursor.at_symbol('-') && !cursor.glued(0) && !cursor.glued(1)))
    cursor.next();
  keep_words(session, cursor.span_from(from));
}

}  // namespace

void read_statements(Session& session, Cursor& cursor) {
  constexpr int deepest = 8;
  if (session.depth >= deepest) {
    session.remarks.add({"too-deep", cursor.rest_span(), "too many brackets in brackets to follow",
                         "write it on a line of its own"});
    cursor.next(cursor.end() - cursor.position());
    return;
  }
  ++session.depth;
  while (!cursor.done()) {
    if (take_separator(session, cursor)) continue;
    session.statement = cursor.position();
    if (cursor.at_symbol('(')) {
      if (read_slot_label(session, cursor)) continue;
      const std::size_t close = cursor.closing();
      if (close >= cursor.end())
        session.remarks.add({"unclosed-bracket", cursor.span_of(cursor.position(), cursor.position() + 1),
                             "`(` is not closed on this line: read as if it closed at the end", "add `)`"});
      const Cursor inside = cursor.part(cursor.position() + 1, close);
      cursor.next(close - cursor.position() + 1);
      read_bracket(session, inside, nullptr);
      continue;
    }
    if (cursor.peek().kind == TokenKind::Bracketed) {
      session.draft().texts.push_back(cursor.peek().text);
      session.rules.push_back(cursor.peek().span);
      cursor.next();
      continue;
    }
    bool taken = false;
    for (const Rule rule : rules) {
      const std::size_t from = cursor.position();
      // Whatever a rule says, it has read nothing if it took no mark: every turn of the loop comes closer to
      // the end.
      if (!rule(session, cursor) || cursor.position() == from) continue;
      session.rules.push_back(cursor.span_from(from));
      taken = true;
      break;
    }
    if (!taken) skip_unread(session, cursor);
    session.then = session.arrow = session.plus = session.new_slot = false;
  }
  session.then_below = session.then && session.depth == 1 && session.line != nullptr;
  --session.depth;
}

}  // namespace repwright::board
