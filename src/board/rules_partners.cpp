#include <array>

#include "board/rule_parts.hpp"

/// What partners do while the piece runs.
namespace repwright::board {
namespace {

/// `each person: 3 x 250 m row`: a relay has its turns each anyway.
bool read_each_person(Session& session, Cursor& cursor) {
  if (!session.draft().said.relay ||
      !cursor.take_any({"each person", "everybody", "everyone", "each runner", "each of you"}))
    return false;
  cursor.take_any({"does", "do"});
  return true;
}

/// `P2`, `partner 2`: whose part follows, counted from 1; 0 if nobody's.
int take_partner_words(Cursor& cursor) {
  if (cursor.take_any({"p1", "partner 1", "partner a"})) return 1;
  if (cursor.take_any({"p2", "partner 2", "partner b"})) return 2;
  return cursor.take_any({"p3", "partner 3", "partner c"}) ? 3 : 0;
}

/// A part that goes on until the other one's is done: `P2: AMRAP of 5 pull-ups, 10 push-ups`.
bool take_open_part(Cursor& cursor) {
  Cursor ahead = cursor;
  if (!ahead.take_any({"amrap of", "amrap", "as many as possible of", "max reps of"})) return false;
  ahead.take_symbol(':');
  cursor = ahead;
  return true;
}

/// `P1: 10 cal row`: the work up to the next label is that partner's.
bool read_part_label(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  int part = take_partner_words(ahead);
  if (part == 0 && at_letter_of_partner(session, ahead)) {
    part = ahead.peek().text[0] - 'a' + 1;
    ahead.next();
  }
  if (part == 0) return false;
  const bool first = part == 1 && session.statement == session.line->first;
  if (session.draft().block.team_sizes.empty()) {
    if (!first) return false;
    session.fresh(ahead.span_from(from)).block.team_sizes = {2};
  }
  ahead.take_symbol(':');
  Draft& draft = session.draft();
  cursor = ahead;
  if (cursor.take_any({"rests", "rest", "resting"})) {
    draft.part = 0;
    if (!draft.block.work_mode) draft.block.work_mode = domain::WorkMode::AlternateByPiece;
    return true;
  }
  draft.part = part;
  if (take_open_part(cursor)) draft.open_part = part;
  return true;
}

}  // namespace

bool at_letter_of_partner(Session& session, const Cursor& cursor) {
  const bool letter = cursor.at_word() && cursor.peek().text.size() == 1 && cursor.at_symbol(':', 1);
  const Draft& draft = session.draft();
  if (!letter || draft.block.team_sizes.empty() || cursor.peek().text[0] != 'a' + draft.part) return false;
  const bool clock = cursor.at_any({"amrap", "emom", "for time", "every", "otm"}, 2) ||
                     cursor.at_any({"rft", "rounds", "rds", "sets"}, 3);
  return !clock && (draft.part > 0 || !draft.has_work());
}

/// What partners do while the piece runs: 'P2: rests', 'swap', 'one works, one rests'.
bool read_partners(Session& session, Cursor& cursor) {
  if (read_each_person(session, cursor) || read_part_label(session, cursor)) return true;
  if (cursor.take_any({"tag to go", "tag", "swap", "swap over", "switch", "change over"})) {
    cursor.take_any({"at the crane", "after each round", "each round", "when back", "when both are done",
                     "when done", "when home", "when runner is back", "when the runner is back",
                     "when runner returns"});
    Draft& draft = session.draft();
    draft.part = 0;
    if (draft.said.relay) return true;
    if (draft.block.team_sizes.empty()) {
      draft.texts.push_back("swap");
      return true;
    }
    if (!draft.block.work_mode && draft.clock && !draft.block.cap)
      draft.block.work_mode = domain::WorkMode::AlternateByPiece;
    return true;
  }
  if (cursor.take_any({"one works", "one working", "one at a time", "one works at a time",
                       "one working at a time", "one person works", "one partner works",
                       "one person working"})) {
    cursor.take_symbol(',');
    cursor.take_symbol('/');
    cursor.take_any({"one rests", "one rest", "other rests", "others rest", "one resting", "the other rests",
                     "two rest", "the others rest", "three rest"});
    Draft& draft = session.draft();
    Entry* last = draft.last_entry();
    if (last != nullptr && last->line == session.line_index && !session.then)
      last->item.mode = domain::PartnerMode::OneWorks;
    else
      draft.mode = domain::PartnerMode::OneWorks;
    return true;
  }
  return false;
}

}  // namespace repwright::board
