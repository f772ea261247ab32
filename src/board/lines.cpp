#include <fmt/format.h>

#include <utility>

#include "board/clocks_in_row.hpp"
#include "board/headings.hpp"
#include "board/part_borders.hpp"
#include "board/rule_parts.hpp"
#include "board/session.hpp"

namespace repwright::board {
namespace {

/// `note 5': words`, `note: words`.
bool read_note_line(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const bool meant =
      ahead.take_any({"aim", "goal", "target", "focus", "cue", "cues", "tip", "tips", "reminder"});
  if (!meant && !ahead.take_any({"note", "notes", "nb"})) return false;
  if (meant && !ahead.at_symbol(':')) return false;
  const auto time = take_time(ahead, session.remarks, Naked::Refused);
  if (!ahead.take_symbol(':')) return false;
  const std::string words = session.kept(ahead.rest_span());
  if (words.empty()) return false;
  const bool inside = !session.chapter().drafts.empty() && !session.draft().untouched() &&
                      !session.line->after_blank && !time && !session.draft().said.note;
  cursor.next(cursor.end() - cursor.position());
  if (inside) {
    session.draft().texts.push_back(words);
    return true;
  }
  Draft& draft = session.fresh(ahead.rest_span());
  draft.said.note = true;
  draft.texts.push_back(words);
  draft.clock = time;
  return true;
}

/// Whether dashes are this board's bullets.
bool others_have_dashes(const Session& session) {
  int dashes = 0;
  for (const Line& line : session.source.lines)
    dashes += session.source.text[line.begin] == '-' || session.source.tokens[line.first].text == "-" ? 1 : 0;
  return dashes > 1;
}

/// Bullets and list numbers that mean nothing.
void take_bullet(Session& session, Cursor& cursor) {
  if (cursor.at_symbol('-') && cursor.at_number(1) && cursor.glued(1) && !others_have_dashes(session)) {
    const domain::Span span = cursor.span_of(cursor.position(), cursor.position() + 2);
    session.remarks.add({"no-amount",
                         span,
                         fmt::format("`{}` is less than nothing", session.kept(span)),
                         "write a plain amount",
                         {cursor.peek(1).text}});
  }
  const bool dash = cursor.at_symbol('-');
  if (dash || cursor.at_symbol(bullet_sign) || (cursor.at_symbol('*') && !cursor.at_number(1)) ||
      cursor.at_symbol('#') || cursor.at_symbol('+'))
    cursor.next();
  Draft* draft = session.chapters.empty() || session.chapter().drafts.empty() ? nullptr : &session.draft();
  if (draft != nullptr && (draft->said.every || draft->said.stations)) return;
  if (draft != nullptr && clocks_waiting(session.chapter()) > 0) return;
  const bool number = cursor.at_number() && (cursor.at_symbol(')', 1) || (cursor.at_symbol('.', 1))) &&
                      cursor.glued(1) && !(cursor.glued(2)) && cursor.position() + 2 < cursor.end();
  if (number) cursor.next(2);
}

/// `A1`, `A1)`, `B ` before sets.
void take_letter(Session& session, Cursor& cursor) {
  session.letter = 0;
  session.letter_digit = false;
  if (!cursor.at_word() || at_letter_of_partner(session, cursor)) return;
  const std::string& word = cursor.peek().text;
  const Said& said = session.draft().said;
  if ((said.every || said.stations) && word.size() == 1 && !session.line->after_blank) return;
  const bool letter = word[0] >= 'a' && word[0] <= 'h';
  if (letter && word.size() == 2 && word[1] >= '1' && word[1] <= '9') {
    session.letter = word[0];
    session.letter_digit = true;
    cursor.next();
  } else if (letter && word.size() == 1 && cursor.at_number(1) && cursor.glued(1) &&
             cursor.peek(1).value < 10 && !cursor.at_symbol(times_sign, 2)) {
    session.letter = word[0];
    session.letter_digit = true;
    cursor.next(2);
  } else if (letter && word.size() == 1) {
    const bool mark =
        (cursor.at_symbol(')', 1) || cursor.at_symbol('.', 1) || cursor.at_symbol(':', 1)) && cursor.glued(1);
    const bool sets =
        cursor.at_number(1) && (cursor.at_any({"sets", "set"}, 2) || cursor.at_symbol(times_sign, 2));
    const bool lift = cursor.at_word(1) && !cursor.at_any({"may", "can", "stops", "does"}, 1) &&
                      session.names.find(cursor.part(cursor.position() + 1, cursor.end())).has_value() &&
                      word != "a";
    if (!mark && !sets && !lift) return;
    session.letter = word[0];
    cursor.next(mark ? 2 : 1);
    return;
  } else {
    return;
  }
  if (cursor.at_symbol(')') || cursor.at_symbol(':') || cursor.at_symbol('.')) cursor.next();
}

bool words_only_part(Part part) {
  return part == Part::WarmUp || part == Part::CoolDown || part == Part::Talk || part == Part::Rest;
}

bool has_number(const Cursor& cursor) {
  for (Cursor ahead = cursor; !ahead.done(); ahead.next())
    if (ahead.at_number() || ahead.at("amrap") || ahead.at("emom") ||
        ahead.at_any({"max", "any order", "once", "rounds"}))
      return true;
  return false;
}

/// Ordinals: '2nd AMRAP: double parts' tells people how, it counts nothing.
bool read_ordinal_line(Session& session, Cursor& cursor) {
  if (!cursor.at_number() || !cursor.at_any({"st", "nd", "rd", "th"}, 1) || !cursor.glued(1) ||
      cursor.at_any({"station"}, 2))
    return false;
  keep_words(session, cursor.rest_span());
  cursor.next(cursor.end() - cursor.position());
  return true;
}

/// 'shared' behind a list holds for the whole line.
void share_the_line(Session& session) {
  if (!std::exchange(session.shared_line, false)) return;
  for (Section& section : session.draft().sections)
    for (Entry& entry : section.entries)
      if (entry.line == session.line_index && !entry.item.share) entry.item.share = domain::Share::Total;
}

/// A letter that stands for a whole piece ('B: AMRAP 8') is a heading of its own.
void letter_opens_piece(Session& session, const Cursor& cursor) {
  if (session.letter == 0 || session.letter_digit) return;
  if (session.draft().has_work()) session.fresh(cursor.rest_span());
}

}  // namespace

namespace {

/// What a line is before it is statements: title, levels, note, window, heading. True if nothing is left.
bool read_line_head(Session& session, Cursor& cursor, bool& opened) {
  if (session.line_index == 0) {
    if (read_level_header(session, cursor)) return true;
    read_title(session, cursor);
  }
  if (cursor.done()) return true;
  take_bullet(session, cursor);
  if (cursor.done()) return true;
  if (read_note_line(session, cursor) || read_level_header(session, cursor)) return true;
  leave_part(session, cursor);
  opened = read_window(session, cursor) || read_start_time(session, cursor) || read_heading(session, cursor);
  const Part part = session.chapter().part;
  if ((opened || !session.draft().has_work()) && words_only_part(part) && !has_number(cursor)) {
    const bool colon_only = cursor.at_symbol(':') && cursor.position() + 1 == cursor.end();
    if (!cursor.done() && !colon_only) session.chapter().words.push_back(session.kept(cursor.rest_span()));
    return true;
  }
  return read_ordinal_line(session, cursor);
}

/// Below a blank line, sets of a lift are no further station and no slot of the clock above.
void sets_open_piece(Session& session, const Cursor& cursor) {
  if (session.line->after_blank && session.draft().has_work() && sets_of_lift_at(session, cursor))
    session.fresh(cursor.rest_span());
}

}  // namespace

void read_line(Session& session, const Line& line) {
  session.line = &line;
  session.then = std::exchange(session.then_below, false);
  session.arrow = session.plus = false;
  session.bracketed = false;
  session.letter = 0;
  Cursor cursor(session.source, line.first, line.last);
  bool opened = false;
  const bool over = read_line_head(session, cursor, opened);
  const std::size_t head = over ? line.last : cursor.position();
  if (head > line.first) session.rules.push_back(cursor.span_of(line.first, head));
  if (over) return;
  if (opened && words_only_part(session.chapter().part) && cursor.at_symbol(':')) cursor.next();
  session.statement = cursor.position();
  session.new_slot = true;
  const Cursor before = cursor;
  take_letter(session, cursor);
  if (cursor.done()) {  // a letter without anything to stand before
    session.letter = 0;
    cursor = before;
  }
  letter_opens_piece(session, cursor);
  sets_open_piece(session, cursor);
  read_statements(session, cursor);
  share_the_line(session);
}

}  // namespace repwright::board
