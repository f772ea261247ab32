#include <fmt/format.h>

#include "board/item_amounts.hpp"
#include "board/item_details.hpp"
#include "board/movement_choice.hpp"
#include "board/rule_parts.hpp"

namespace repwright::board {
namespace {

using domain::Span;
using domain::Unit;

bool bracket_says_known(const Cursor& cursor) {
  Cursor in = cursor;
  in.next();
  if (in.at_number()) {
    in.next();
    return in.at_symbol('/') || in.at_symbol('%') || in.at_any({"kg", "lb", "each", "per", "rounds", "rds"});
  }
  return in.at_symbol('>') || in.at_symbol('@') ||
         in.at_any({"each",     "per",   "scale", "or",    "e",     "alt",   "one",
                    "rpe",      "rest",  "cap",   "every", "build", "ea",    "sync",
                    "together", "tempo", "start", "split", "total", "shared"});
}

/// Words of an unknown movement, its bracket included.
Span take_free_words(Cursor& cursor) {
  const std::size_t from = cursor.position();
  if (cursor.at_any({"or", "and", "then", "etc", "nd", "rd", "th", "st", "to", "on", "off", "rest"}))
    return cursor.span_from(from);
  while (!cursor.done()) {
    const bool hyphen = cursor.at_symbol('-') && cursor.glued(0) && cursor.at_word(1) && cursor.glued(1);
    const bool prime = cursor.at_symbol('\'') && cursor.glued(0);
    if (!cursor.at_word() && !hyphen && !prime) break;
    if (cursor.position() > from &&
        cursor.at_any({"then", "each", "ea", "per", "for time", "rest", "or", "sync", "together", "e", "in"}))
      break;
    cursor.next();
  }
  if (cursor.at_symbol('(') && cursor.position() > from && !bracket_says_known(cursor)) {
    const std::size_t close = cursor.closing();
    cursor.next(close - cursor.position() + 1);
  }
  return cursor.span_from(from);
}

void take_name(Session& session, Cursor& cursor, Entry& entry, const Named& named) {
  const std::size_t from = cursor.position();
  cursor.next(named.marks);
  entry.item.personal_version = named.class_word;
  add_note(entry, kept_words(named.trailing));
  if (named.doubled) entry.item.implements = 2;
  const Span span = cursor.span_from(from);
  if (named.slip)
    session.remarks.add(
        {"spelling-guess",
         span,
         fmt::format("`{}` was read as {}",
                     session.kept(span).find(named.slip->first) == std::string::npos ? session.kept(span)
                                                                                     : named.slip->first,
                     named.slip->second),
         "mend the word if that is wrong",
         {named.slip->second}});
}

/// `ground to overhead 20 kg plate`: the movement by the name of what is lifted, where the catalogue has one;
/// else the word stays beside the work.
void settle_load_word(const Session& session, Entry& entry, const Named& named) {
  if (entry.load_word.empty()) return;
  const Meaning* whole = session.names.exact(entry.load_word + " " + named.written);
  const domain::Movement* chosen = movement_of(session, entry);
  if (whole != nullptr && !whole->ambiguous) {
    entry.item.movement = whole->movements.front();
  } else if (chosen == nullptr || !own_word(chosen, entry.load_word)) {
    add_note(entry, entry.load_word);
  }
}

void settle_movement(Session& session, Entry& entry, const Named& named, const Span& span) {
  entry.item.movement = choose_movement(session, named, entry, span);
  settle_load_word(session, entry, named);
  entry.lift = lift_of(session, named);
  const bool plain_pull_up = entry.item.movement->text == "pull-up" && !named.strict && !named.class_word &&
                             named.written.find("strict") == std::string::npos;
  if (!plain_pull_up) return;
  const bool swing = session.house.pull_up_may_swing;
  if (!swing) return;
  entry.item.movement = domain::MovementId{"kip-pull-up"};
  session.remarks.add_once({"pull-up-swing",
                            span,
                            "a plain pull-up may swing in this house",
                            "write strict pull-ups if they must not",
                            {"strict pull-ups", "kipping pull-ups"}});
}

bool take_unknown(Session& session, Cursor& cursor, Entry& entry) {
  if (cursor.peek().kind == TokenKind::Quoted) {
    entry.item.free_text = cursor.peek().text;
    const std::size_t from = cursor.position();
    cursor.next();
    remark_unknown(session, cursor.span_from(from), entry.item.free_text, unit_of(entry));
    return true;
  }
  const Span words = take_free_words(cursor);
  entry.item.free_text = session.kept(words);
  if (!entry.item.free_text.empty() && words.end > words.begin)
    remark_unknown(session, words, entry.item.free_text, unit_of(entry));
  return true;
}

/// Metres with a pace and no name are run.
bool implied_run(const Cursor& cursor, const Entry& entry) {
  const bool metres = entry.amount && entry.amount->unit == Unit::Metres;
  return metres &&
         (cursor.done() || cursor.at_symbol('@') || cursor.at_any({"at", "easy"}) || cursor.at_symbol(','));
}

bool goes_on_with_lift(const Cursor& cursor, const Entry& entry) {
  return (entry.sets || entry.amount) && (cursor.at_symbol('@') || (entry.sets && cursor.done()) ||
                                          cursor.at_any({"rpe"}) || cursor.at_symbol('%'));
}

bool may_stand_without_amount(Session& session, const Cursor& behind) {
  if (for_distance_follows(behind)) return true;
  if (amount_comes_from_piece(session)) return true;
  const Part part = session.chapter().part;
  const bool words_only =
      part == Part::WarmUp || part == Part::CoolDown || part == Part::Talk || part == Part::Skill;
  if (words_only) return false;
  const bool ends = behind.done() || behind.at_symbol(',') || behind.at_symbol('/') ||
                    behind.at_symbol('+') || behind.at_symbol('@') || behind.at_symbol('(') ||
                    behind.at_symbol(':') || behind.at_any({"superset"}) ||
                    (behind.at_symbol('-') && !behind.glued(0) && !behind.glued(1)) ||
                    (behind.at_symbol('.') && behind.position() + 1 == behind.end());
  return ends;
}

/// `Kniebeuge 5x5`: a name that nobody knows, but sets behind it. Its marks; 0 if there is none.
std::size_t unknown_lift_ahead(Cursor cursor) {
  if (cursor.at("tempo")) return 0;
  const std::size_t from = cursor.position();
  std::size_t words = 0;
  while (cursor.at_word() ||
         (words > 0 && (cursor.at_symbol('-') || (cursor.at_symbol('.') && cursor.glued(0))))) {
    cursor.next();
    ++words;
  }
  const bool sets = cursor.at_number() && cursor.at_symbol(times_sign, 1) && cursor.at_number(2);
  return words < 6 && sets ? cursor.position() - from : 0;
}

/// The next marks are a name that no catalogue has, whatever its words mean elsewhere.
void take_as_name(Session& session, Cursor& cursor, Entry& entry, std::size_t marks) {
  const std::size_t from = cursor.position();
  cursor.next(marks);
  entry.item.free_text = session.kept(cursor.span_from(from));
  remark_unknown(session, cursor.span_from(from), entry.item.free_text, unit_of(entry));
}

/// `DB lunges 2x15`: two sets, unless two bells were meant.
void remark_sets_or_bells(Session& session, const Entry& entry, const domain::MovementId& id) {
  if (entry.sets != 2 || !entry.amount || !entry.amount->plain()) return;
  const domain::Movement* movement = session.names.movement(id);
  const bool bells =
      movement != nullptr && (movement->category == "dumbbell" || movement->category == "kettlebell");
  if (!bells) return;
  const std::string number = session.kept(entry.amount->span);
  session.remarks.add({"sets-or-bells", entry.amount->span,
                       fmt::format("`2x{}` was read as two sets of {}", number, number),
                       "write the amount before the name if two bells were meant"});
}

/// A movement by its name, with the amount before or behind it; false where a name alone is no work.
bool take_named(Session& session, Cursor& cursor, Entry& entry, const Named& named) {
  const std::size_t from = cursor.position();
  if (entry.name_first) {
    Cursor behind = cursor;
    behind.next(named.marks);
    Entry probe = entry;
    probe.item.movement = named.meaning.movements.front();
    Cursor look = behind;
    take_amount_behind(session, look, probe);
    Remarks silent;
    const auto loads = take_numbers(behind, silent);
    const bool loaded = loads && reads_as_loads(session, probe, *loads);
    if (!probe.amount && !loaded && !may_stand_without_amount(session, look)) return false;
  }
  take_name(session, cursor, entry, named);
  const Span span = cursor.span_from(from);
  entry.item.movement = named.meaning.movements.front();
  take_amount_behind(session, cursor, entry);
  take_unit_behind(cursor, entry);
  if (entry.name_first) remark_sets_or_bells(session, entry, named.meaning.movements.front());
  while (read_detail(session, cursor, entry)) {
  }
  settle_movement(session, entry, named, span);
  return true;
}

/// Work without a name of the catalogue: more of the last lift, a distance to run, words that nobody knows.
bool take_nameless(Session& session, Cursor& cursor, Entry& entry) {
  const bool words = cursor.at_word() || cursor.peek().kind == TokenKind::Quoted;
  const bool listed = !entry.amount && amount_comes_from_piece(session) &&
                      (cursor.peek().kind == TokenKind::Quoted || session.draft().said.stations);
  if (implied_run(cursor, entry)) {
    entry.item.movement = domain::MovementId{"run"};
  } else if (entry.amount && goes_on_with_lift(cursor, entry)) {
    entry.continues = true;
  } else if (words && (entry.amount || listed)) {
    take_unknown(session, cursor, entry);
  } else if (const std::size_t marks = unknown_lift_ahead(cursor); marks > 0) {
    take_as_name(session, cursor, entry, marks);
    take_amount_behind(session, cursor, entry);
  } else {
    return false;
  }
  // A word of the notation, such as 'RD', is no name, and with nothing taken there is no work.
  if (!entry.continues && !entry.item.movement && entry.item.free_text.empty()) return false;
  while (read_detail(session, cursor, entry)) {
  }
  return true;
}

}  // namespace

bool read_item(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  Entry entry;
  entry.line = session.line_index;
  const std::size_t from = ahead.position();
  if (Entry tempo; read_tempo(session, ahead, tempo)) return false;  // `31X1` is no set of anything
  take_amount_before(session, ahead, entry);
  entry.name_first = !entry.amount && !entry.sets;
  const std::optional<Named> named = session.names.find(ahead);
  const bool taken = named ? take_named(session, ahead, entry, *named) : take_nameless(session, ahead, entry);
  if (!taken) return false;
  refuse_second_amount(session, ahead, entry);
  entry.span = ahead.span_from(from);
  cursor = ahead;
  place_entry(session, std::move(entry));
  return true;
}

bool read_same_count(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  if (!ahead.take_any({"same", "the same", "same number", "the same number", "equal", "same reps",
                       "same count", "as many"}))
    return false;
  ahead.take("of");
  const Entry* above = session.draft().last_entry();
  const std::optional<Named> named = session.names.find(ahead);
  if (!named || above == nullptr || (!above->amount && !session.draft().scheme)) return false;
  Entry entry;
  entry.line = session.line_index;
  entry.amount = above->amount;
  if (!take_named(session, ahead, entry, *named)) return false;
  entry.span = ahead.span_from(from);
  cursor = ahead;
  place_entry(session, std::move(entry));
  return true;
}

std::vector<Entry> read_entries(Session& session, Cursor& cursor) {
  // The work is read into a piece of its own, which never becomes a block.
  std::vector<Chapter> kept = std::move(session.chapters);
  session.chapters.clear();
  session.draft();
  const std::optional<domain::MovementId> lift = session.lift;
  read_statements(session, cursor);
  session.lift = lift;
  std::vector<Entry> entries;
  for (Draft& draft : session.chapter().drafts)
    for (Section& section : draft.sections)
      for (Entry& entry : section.entries) entries.push_back(std::move(entry));
  session.chapters = std::move(kept);
  return entries;
}

}  // namespace repwright::board
