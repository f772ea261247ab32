#include "board/headings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "board/rule_parts.hpp"

namespace repwright::board {
namespace {

using base::Duration;

struct PartWord {
  std::string_view words;
  Part part;
  bool sure;  // a heading whatever follows; else minutes, a colon or the end must follow
};
constexpr std::array part_words{PartWord{"warm up", Part::WarmUp, true},
                                PartWord{"warmup", Part::WarmUp, true},
                                PartWord{"wu", Part::WarmUp, true},
                                PartWord{"w up", Part::WarmUp, true},
                                PartWord{"mobility", Part::WarmUp, false},
                                PartWord{"activation", Part::WarmUp, false},
                                PartWord{"skill", Part::Skill, true},
                                PartWord{"skills", Part::Skill, true},
                                PartWord{"technique", Part::Skill, true},
                                PartWord{"practice", Part::Skill, false},
                                PartWord{"strength", Part::Strength, true},
                                PartWord{"str", Part::Strength, true},
                                PartWord{"accessory", Part::Strength, false},
                                PartWord{"accessories", Part::Strength, false},
                                PartWord{"accessory work", Part::Strength, false},
                                PartWord{"assistance", Part::Strength, false},
                                PartWord{"acc", Part::Strength, false},
                                PartWord{"lift", Part::Strength, false},
                                PartWord{"lifting", Part::Strength, false},
                                PartWord{"cond", Part::Piece, true},
                                PartWord{"conditioning", Part::Piece, true},
                                PartWord{"piece", Part::Piece, false},
                                PartWord{"main piece", Part::Piece, false},
                                PartWord{"main", Part::Piece, false},
                                PartWord{"part", Part::Piece, false},
                                PartWord{"engine", Part::Piece, false},
                                PartWord{"workout", Part::Piece, false},
                                PartWord{"event", Part::Piece, false},
                                PartWord{"cool down", Part::CoolDown, true},
                                PartWord{"cooldown", Part::CoolDown, true},
                                PartWord{"cool", Part::CoolDown, false},
                                PartWord{"cd", Part::CoolDown, false},
                                PartWord{"stretch", Part::CoolDown, false},
                                PartWord{"change", Part::Rest, false},
                                PartWord{"change over", Part::Rest, true},
                                PartWord{"changeover", Part::Rest, true},
                                PartWord{"set out", Part::Rest, true},
                                PartWord{"set up", Part::Rest, true},
                                PartWord{"setup", Part::Rest, false},
                                PartWord{"water", Part::Rest, false},
                                PartWord{"transition", Part::Rest, false},
                                PartWord{"break", Part::Rest, false},
                                PartWord{"tidy up", Part::Rest, false},
                                PartWord{"clean up", Part::Rest, false},
                                PartWord{"extra", Part::Extra, false},
                                PartWord{"extras", Part::Extra, false},
                                PartWord{"optional", Part::Extra, false},
                                PartWord{"if time", Part::Extra, true},
                                PartWord{"bonus", Part::Extra, false},
                                PartWord{"finisher", Part::Finisher, true},
                                PartWord{"talk", Part::Talk, false},
                                PartWord{"brief", Part::Talk, false},
                                PartWord{"briefing", Part::Talk, false},
                                PartWord{"scores", Part::Talk, false},
                                PartWord{"intro", Part::Talk, false},
                                PartWord{"welcome", Part::Talk, false},
                                PartWord{"score", Part::Talk, false}};

struct Found {
  Part part = Part::None;
  std::size_t marks = 0;
  bool sure = false;
};

Found find_part(const Cursor& cursor) {
  Found found;
  for (const PartWord& word : part_words) {
    const std::size_t reach = cursor.reach(word.words);
    if (reach > found.marks) found = {word.part, reach, word.sure};
  }
  return found;
}

constexpr std::array<std::string_view, 40> day_words{
    "mon",    "tue", "tues",    "wed",      "thu",       "thur",     "thurs",   "fri",
    "sat",    "sun", "monday",  "tuesday",  "wednesday", "thursday", "friday",  "saturday",
    "sunday", "wk",  "week",    "day",      "jan",       "feb",      "mar",     "apr",
    "may",    "jun", "jul",     "aug",      "sep",       "oct",      "nov",     "dec",
    "am",     "pm",  "january", "february", "june",      "july",     "october", "november"};

bool is_day(const Cursor& cursor) {
  if (!cursor.at_word()) return false;
  const auto at = std::ranges::find(day_words, cursor.peek().text);
  return at != day_words.end() && at - day_words.begin() < 20;
}

/// Whether a clock, a count or an amount with a name stands anywhere in the line.
bool says_work(const Session& session, Cursor cursor) {
  for (; !cursor.done(); cursor.next()) {
    if (cursor.at_any({"amrap",   "emom",         "otm",        "rft",        "for time", "rounds",
                       "rds",     "build to",     "accumulate", "teams of",   "buy in",   "superset",
                       "ygig",    "stations",     "station",    "cap",        "tc",       "every",
                       "chipper", "waterfall",    "max",        "sets",       "note",     "rest",
                       "relay",   "for distance", "find a",     "work up to", "minute 1", "min 1",
                       "levels",  "title",        "ft"}))
      return true;
    const Token& token = cursor.peek();
    if (token.kind == TokenKind::Word && token.text.size() > 3 && token.text[0] == 'e' &&
        token.text.ends_with("mom"))
      return true;
    if (cursor.at_symbol(times_sign) && cursor.at_number(1)) return true;
    if (cursor.at_number() && (cursor.at_symbol(times_sign, 1) || cursor.at_any({"rm"}, 1))) return true;
    if (cursor.at_any({"min on", "s on", "sec on", "min work", "sec work"})) return true;
    if (cursor.at_number()) {
      Cursor ahead = cursor;
      Remarks silent;
      const auto numbers = take_numbers(ahead, silent);
      if (numbers && numbers->joined == Joined::Dashes && numbers->values.size() > 2) return true;
      if (numbers && session.names.find(ahead)) return true;
      if (numbers && (numbers->unit == domain::Unit::Metres || numbers->unit == domain::Unit::Kilocalories))
        return true;
    }
    if (cursor.at_word()) {
      const auto named = session.names.find(cursor);
      Cursor behind = cursor;
      if (named) behind.next(named->marks);
      if (named) behind.take_symbol(':');
      if (named && behind.at_number()) return true;
    }
  }
  return false;
}

/// `A - 11:00`, `Kids: ...`: words that no rule knows, before a colon.
bool unknown_prefix(Session& session, const Cursor& cursor) {
  Cursor ahead = cursor;
  while (ahead.at_word() || ahead.at_symbol('-')) ahead.next();
  if (!ahead.at_symbol(':') || ahead.position() == cursor.position() ||
      ahead.position() - cursor.position() > 4)
    return false;
  const Cursor prefix = cursor.part(cursor.position(), ahead.position());
  if (session.names.find(prefix) || find_part(prefix).part != Part::None) return false;
  return !prefix.at_any(
      {"buy",   "cash",   "odd",     "even",   "minute", "min",      "superset", "accumulate", "levels",
       "relay", "score",  "p1",      "p2",     "teams",  "pairs",    "note",     "rounds",     "once",
       "build", "then",   "rest",    "title",  "amrap",  "emom",     "for",      "any",        "every",
       "each",  "ladder", "chipper", "intent", "heats",  "stations", "partners", "partner",    "circuit",
       "cap",   "with",   "in",      "max",    "otm",    "tempo",    "ft",       "not",        "nft"});
}

void note_slip_of_line(Session& session, const Cursor& cursor, std::string& title) {
  if (!title.empty()) title += ' ';
  title += session.kept(cursor.rest_span());
}

/// `21/15/9`: no date, but a list of counts.
bool too_late_for_a_month(const Cursor& cursor) {
  return cursor.at_number(2) && cursor.peek(2).value > 12 && cursor.peek().value > 12;
}

struct Practice {
  Cursor words;
  Duration minutes;
};

/// `handstand 10'`, up to the end of the line: what is practised and for how long. Nothing if the line says
/// anything else.
std::optional<Practice> practice_in(const Cursor& line) {
  Cursor ahead = line;
  while (ahead.at_word()) ahead.next();
  const Cursor words = line.part(line.position(), ahead.position());
  if (words.done()) return std::nullopt;
  Remarks silent;
  const auto minutes = take_time(ahead, silent, Naked::Refused);
  if (!minutes || !ahead.done()) return std::nullopt;
  return Practice{words, *minutes};
}

}  // namespace

std::size_t part_reach(const Cursor& cursor) {
  return find_part(cursor).marks;
}

Part part_at(const Cursor& cursor) {
  return find_part(cursor).part;
}

bool reads_as_title(Session& session, Cursor cursor) {
  if (cursor.done()) return false;
  if (cursor.at_symbol('-') || cursor.at_symbol('*') || cursor.at_symbol(bullet_sign) ||
      cursor.at_symbol('('))
    return false;
  if (cursor.at_any({"from", "ladder"})) {
    Cursor run = cursor;
    if (take_run_of_counts(run)) return false;
  }
  if (begins_at_nothing(cursor) || at_dotted_counts(cursor)) return false;
  if (cursor.at_number()) {
    Cursor time = cursor;
    Remarks silent;
    const bool date =
        ((cursor.at_symbol('/', 1) || cursor.at_symbol('.', 1)) && !too_late_for_a_month(cursor)) ||
        (cursor.at_word(1) && std::ranges::find(day_words, cursor.peek(1).text) != day_words.end());
    if (!date && !take_time(time, silent, Naked::Refused)) return false;
  }
  if (is_day(cursor)) return !says_work(session, cursor);
  const Found part = find_part(cursor);
  if (part.part != Part::None) {
    Cursor behind = cursor;
    behind.next(part.marks);
    if (behind.at_word() && behind.peek().text.size() == 1) behind.next();  // `Piece A`
    if (part.sure || behind.done() || behind.at_number() || behind.at_symbol(':') || behind.at_symbol('-') ||
        behind.at_symbol('('))
      return false;
  }
  if (says_work(session, cursor)) return false;
  if (cursor.at_any({"in pairs",  "pairs",       "partner", "partners", "for", "then", "with",  "score",
                     "intent",    "vest",        "quiet",   "swap",     "odd", "even", "or",    "heats",
                     "two heats", "three heats", "same",    "cash out", "one", "p1",   "trios", "keep"}))
    return false;
  const std::optional<Named> name = session.names.find(cursor);
  return !name || name->marks != cursor.end() - cursor.position();
}

void read_title(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  if (ahead.take("title") && ahead.take_symbol(':')) {
    session.title = session.kept(ahead.rest_span());
    cursor.next(cursor.end() - cursor.position());
    return;
  }
  if (reads_as_title(session, cursor)) {
    note_slip_of_line(session, cursor, session.title);
    cursor.next(cursor.end() - cursor.position());
    return;
  }
  ahead = cursor;
  if (is_day(ahead)) {
    while (!ahead.done() && (std::ranges::find(day_words, ahead.peek().text) != day_words.end() ||
                             (ahead.at_number() && ahead.before().kind == TokenKind::Word &&
                              (ahead.before().text.starts_with("w") || ahead.before().text == "day"))))
      ahead.next();
  } else if (unknown_prefix(session, ahead)) {
    while (!ahead.at_symbol(':')) ahead.next();
  } else {
    return;
  }
  session.title = session.kept(cursor.span_of(cursor.position(), ahead.position()));
  ahead.take_symbol(':');
  ahead.take_symbol(',');
  ahead.take_symbol('-');
  cursor = ahead;
}

bool read_level_header(Session& session, const Cursor& cursor) {
  if (!cursor.at_word()) return false;
  std::vector<std::string> levels;
  std::size_t from = cursor.position();
  for (Cursor ahead = cursor;; ahead.next()) {
    if (ahead.done() || ahead.at_symbol('/') || ahead.at_symbol('|')) {
      const std::size_t words = ahead.position() - from;
      if (words == 0 || words > 3) return false;
      const Cursor part = cursor.part(from, ahead.position());
      if (find_part(part).part != Part::None || session.names.find(part)) return false;
      levels.push_back(session.kept(part.rest_span()));
      from = ahead.position() + 1;
      if (ahead.done()) break;
    } else if (!ahead.at_word()) {
      return false;
    }
  }
  if (levels.size() < 2 || levels.size() > 5) return false;
  if (session.draft().has_work() || session.draft().has_clock()) session.fresh(cursor.rest_span());
  session.draft().block.levels = std::move(levels);
  return true;
}

/// `..., then finisher: max burpees`: a part that begins inside a line.
bool read_inline_heading(Session& session, Cursor& cursor) {
  const Part part = find_part(cursor).part;
  const bool own = part == Part::Finisher || part == Part::Extra || part == Part::CoolDown;
  if (!own || session.bracketed || session.depth > 1) return false;
  return read_heading(session, cursor);
}

bool read_heading(Session& session, Cursor& cursor) {
  const Found found = find_part(cursor);
  if (found.part == Part::None) return false;
  Cursor ahead = cursor;
  ahead.next(found.marks);
  // `Piece A`, `Part 2`, `Cond B`.
  const bool letter = ahead.at_word() && ahead.peek().text.size() == 1 && found.part != Part::Talk;
  if (letter) ahead.next();
  const bool numbered = found.part == Part::Piece && ahead.at_number() &&
                        (ahead.at_symbol(':', 1) || ahead.at_symbol('-', 1)) &&
                        !(ahead.glued(1) && ahead.at_number(2) && ahead.glued(2));
  if (numbered) ahead.next();
  const std::size_t title_end = ahead.position();
  Cursor minutes = ahead;
  const bool bracket = minutes.take_symbol('(');
  minutes.take_symbol('-');
  auto time = take_time(minutes, session.remarks, Naked::Refused);
  if (time && bracket && !minutes.take_symbol(')')) time.reset();
  if (time && (minutes.at_any({"amrap", "emom", "on the clock", "cap", "for time", "on", "otm", "off"}) ||
               minutes.at_symbol('/') || minutes.at_symbol(times_sign)))
    time.reset();
  const bool marked = time || ahead.done() || ahead.at_symbol(':') ||
                      (ahead.at_symbol('-') && !ahead.glued(1)) ||
                      (ahead.at_symbol('(') && found.part != Part::Talk);
  if (!marked && !found.sure) return false;
  if (cursor.at("score") && !time) return false;
  if (cursor.at("scores") && !time && !ahead.done()) return false;
  if (found.part == Part::Rest && !found.sure && !time && !ahead.done()) return false;
  const domain::Span span = cursor.span_of(cursor.position(), title_end);
  Chapter& chapter = session.open_chapter(found.part, session.kept(span), span);
  session.score_from = session.chapters.size() - 1;
  if (time) {
    chapter.minutes = time;
    chapter.span = cursor.span_of(cursor.position(), minutes.position());
    ahead = minutes;
  }
  const bool words_only = found.part == Part::WarmUp || found.part == Part::CoolDown ||
                          found.part == Part::Talk || found.part == Part::Rest;
  if (!words_only) {
    ahead.take_symbol(':');
    if (ahead.at_symbol('-') && !ahead.glued(1)) ahead.next();
  }
  if (found.part == Part::Skill && !time && !says_work(session, ahead)) {
    if (const auto practice = practice_in(ahead)) {
      chapter.minutes = practice->minutes;
      ahead = practice->words;
    }
  }
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
