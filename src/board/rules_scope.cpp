#include <fmt/format.h>

#include <algorithm>

#include "board/rule_parts.hpp"

/// What part of a piece the work belongs to: buy-in, cash-out, any order, sets, the same again.
namespace repwright::board {
namespace {

/// 'superset with', 'superset': two lines that are done in turns.
bool read_superset(Session& session, Cursor& cursor) {
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
  if (!ahead.take_any({"superset", "supersets", "giant set"})) return false;
  session.clocked(ahead.span_from(from)).said.superset = true;
  cursor = ahead;
  return true;
}

/// 'heavier each set': what is scored is the load.
bool read_more_load(Session& session, Cursor& cursor) {
  const Said& said = session.draft().said;
  if ((said.sets || said.superset || said.every) && session.draft().has_work() &&
      cursor.take_any({"build", "building", "build up", "increasing", "add weight", "ascending",
                       "add weight each set", "heavier each set", "go up each set"})) {
    session.draft().said.load_scored = true;
    return true;
  }
  return false;
}

/// `1 set max reps @ 80%`: of the lift above.
void place_more_sets(Session& session, Cursor& ahead, std::size_t from, int count, const Numbers& reps) {
  Entry more;
  more.line = session.line_index;
  more.sets = count;
  more.amount = reps;
  more.continues = true;
  while (read_detail(session, ahead, more)) {
  }
  more.span = ahead.span_from(from);
  place_entry(session, std::move(more));
}

}  // namespace

bool read_set_words(Session& session, Cursor& cursor) {
  if (read_superset(session, cursor) || read_more_load(session, cursor)) return true;
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const auto count = ahead.take_count();
  if (!count ||
      !ahead.take_any({"sets", "set", "giant sets", "supersets", "super sets", "tri sets", "trisets"}))
    return false;
  check_rounds(session, *count, ahead.span_from(from));
  const std::size_t sides_from = ahead.position();
  std::string sides;
  if (ahead.take_any({"each side", "per side", "each leg", "each arm", "e s"}))
    sides = session.kept(ahead.span_from(sides_from));
  ahead.take("of");
  const std::size_t max_from = ahead.position();
  const bool max = ahead.take_any({"max reps", "to failure", "max effort"}) ||
                   (ahead.at("max") && (ahead.at_symbol(':', 1) || ahead.position() + 1 == ahead.end()) &&
                    ahead.take("max"));
  const Numbers as_many{.values = {domain::Max{}}, .span = ahead.span_of(max_from, ahead.position())};
  if (max && session.lift && ahead.at_symbol('@')) {
    place_more_sets(session, ahead, from, *count, as_many);
    cursor = ahead;
    return true;
  }
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
    draft->sides = sides;
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
  if (ahead.take_any({"cash out", "cashout", "buy out", "buyout", "finish with", "to finish"})) {
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
