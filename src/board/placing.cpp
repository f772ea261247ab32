#include <algorithm>

#include "board/session.hpp"

/// Where a line of work goes: into the round, a slot, a station, a set.
namespace repwright::board {
namespace {

Section& plain_section(Draft& draft, const Session& session, const Entry& entry) {
  if (draft.sections.empty()) draft.sections.push_back({.line = session.line_index});
  Section* last = &draft.sections.back();
  const bool over = last->this_line_only && last->line != session.line_index && session.line->indent == 0;
  const bool once_over =
      last->role == Role::Once && !last->entries.empty() &&
      (session.then || (last->line != session.line_index && last->entries.back().line == last->line &&
                        session.line->indent == 0)) &&
      draft.said.buy_in;
  const bool cash_out = draft.sections.size() > 2 && last->role == Role::Once;
  const bool tail_over = last->role == Role::AnyOrder && last->line != entry.line && last->this_line_only;
  // 'then' alone on a line, or work behind it that is less indented than the rounds above: they are over.
  const auto indent_of = [&](const Entry& of) {
    return session.source.lines[static_cast<std::size_t>(of.line)].indent;
  };
  const bool rounds_over =
      last->role == Role::Rounds && session.then && !last->entries.empty() &&
      last->entries.back().line != session.line_index &&
      (session.statement == session.line->first || session.line->indent < indent_of(last->entries.back()));
  if (rounds_over) {
    draft.sections.push_back({.role = Role::Once, .line = session.line_index});
    return draft.sections.back();
  }
  if (over || (once_over && !cash_out) || tail_over) {
    draft.sections.push_back({.line = session.line_index});
    last = &draft.sections.back();
  }
  return *last;
}

void place_in_slot(Session& session, Draft& draft, Entry entry) {
  const bool stations = draft.said.stations;
  const bool apart = session.new_slot || draft.slots.empty() ||
                     (!draft.slots.back().empty() && draft.slots.back().back().line != entry.line);
  if (draft.slot >= 0 && static_cast<std::size_t>(draft.slot) < draft.slots.size()) {
    auto& slot = draft.slots[static_cast<std::size_t>(draft.slot)];
    const bool labelled_elsewhere = stations && !slot.empty() && session.new_slot && !session.plus;
    if (!labelled_elsewhere) {
      slot.push_back(std::move(entry));
      return;
    }
    draft.slot = -1;
  }
  const bool in_turn =
      draft.said.alternating && !session.plus && !draft.slots.empty() && !draft.slots.back().empty();
  const bool own = in_turn    ? true
                   : stations ? (apart && !session.plus) || draft.slots.empty()
                              : draft.slots.empty() || draft.slots.back().empty() ||
                                    draft.slots.back().back().line != entry.line;
  if (own) draft.slots.emplace_back();
  draft.slots.back().push_back(std::move(entry));
}

void place_lettered(Session& session, Entry entry) {
  entry.letter = session.letter;
  entry.lettered = session.letter_digit;
  Draft* draft = &session.draft();
  Entry* last = draft->last_entry();
  const bool same = last != nullptr && last->letter == entry.letter && last->lettered && entry.lettered;
  const bool set_header =
      draft->said.sets && draft->block.sets && (last == nullptr || last->letter == entry.letter);
  if (!same && !set_header && draft->has_work()) draft = &session.fresh(entry.span);
  if (draft->span.line == 0) draft->span = entry.span;
  if (entry.lettered)
    draft->said.superset = true;
  else
    draft->said.sets = true;
  plain_section(*draft, session, entry).entries.push_back(std::move(entry));
}

/// What a line above said of all the work below it.
void hand_down(const Session& session, const Draft& draft, Entry& entry) {
  domain::Item& item = entry.item;
  if (!item.share) item.share = draft.share;
  if (!item.mode && item.share != domain::Share::Sync) item.mode = draft.mode;
  if (!item.effort) item.effort = draft.effort;
  if (!item.tempo) item.tempo = draft.tempo;
  const domain::Movement* movement = item.movement ? session.names.movement(*item.movement) : nullptr;
  const bool paced =
      movement != nullptr && (movement->category == "run" || movement->category == "ergometer");
  if (item.pace.empty() && paced) item.pace = draft.pace;
  entry.part = draft.part;
  if (!draft.sides.empty() && !entry.both_sides) {
    entry.both_sides = true;
    entry.side_words = draft.sides;
  }
}

/// `Row 5 x 500 m`: a repeated distance on a machine or the road, no sets.
bool repeats_along(Session& session, const Draft& draft, const Entry& entry) {
  const domain::Movement* movement =
      entry.item.movement ? session.names.movement(*entry.item.movement) : nullptr;
  const bool along =
      movement != nullptr && (movement->category == "run" || movement->category == "ergometer");
  const bool distance = entry.amount && entry.amount->unit && *entry.amount->unit != domain::Unit::Reps &&
                        *entry.amount->unit != domain::Unit::Seconds;
  return along && distance && session.letter == 0 && !draft.said.superset &&
         session.chapter().part != Part::Strength;
}

bool list_of_sets(Session& session, Draft& draft, const Entry& entry) {
  if (!entry.name_first || !entry.amount || entry.amount->joined != Joined::Dashes || entry.sets ||
      draft.scheme)
    return false;
  const auto& values = entry.amount->values;
  if (values.size() < 3 || entry.amount->open) return false;
  if (draft.said.for_time || draft.said.amrap) return false;
  const domain::Movement* movement =
      entry.item.movement ? session.names.movement(*entry.item.movement) : nullptr;
  const auto plain = entry.amount->plain_values();
  bool falls = plain.size() == values.size() && plain.front() >= 9;
  for (std::size_t i = 1; i < plain.size(); ++i) falls = falls && plain[i] <= plain[i - 1] - 2;
  return !falls || session.chapter().part == Part::Strength ||
         (movement != nullptr && movement->category == "barbell");
}

/// `1x5 @ 75 %, 1x3 @ 85 %`: single sets of one lift that differ.
bool one_more_set(Draft& draft, const Entry& entry) {
  const Entry* last = draft.last_entry();
  return entry.sets == 1 && last != nullptr && last->sets == 1 && last->line == entry.line && draft.said.sets;
}

/// The name of a lift alone above: `Back squat`, with its sets on the line that is read now. Null if none.
Entry* name_above(const Session& session, Draft& draft) {
  Entry* last = draft.last_entry();
  const bool waits = last != nullptr && last->item.movement && !last->amount && !last->sets &&
                     last->line != session.line_index && !draft.has_clock() && !draft.block.rounds;
  return waits ? last : nullptr;
}

/// `RPE 8`, `4 x 5 @ 80 %`: more of the lift that was named last.
void place_continued(Session& session, Draft& draft, Entry entry) {
  if (session.lift) {
    entry.item.movement = session.lift;
    entry.lift = session.lift_in_sets;
    if (Entry* last = name_above(session, draft); last != nullptr && entry.sets) {
      entry.continues = false;
      entry.letter = last->letter;
      entry.lettered = last->lettered;
      if (!entry.item.load_share) entry.item.load_share = last->item.load_share;
      *last = std::move(entry);
      draft.said.sets = true;
      return;
    }
    if (one_more_set(draft, entry)) {
      plain_section(draft, session, entry).entries.push_back(std::move(entry));
      return;
    }
    if (!entry.sets && !draft.said.build) {
      Entry* last = draft.last_entry();
      if (last != nullptr && !last->amount && !last->sets) {
        entry.continues = false;
        if (!entry.item.load_share) entry.item.load_share = last->item.load_share;
        *last = std::move(entry);
        last->continues = true;
        draft.said.sets = true;
        return;
      }
      if (draft.said.sets) {
        plain_section(draft, session, entry).entries.push_back(std::move(entry));
        return;
      }
    }
  }
  Draft& fresh = session.fresh(entry.span);
  fresh.said.sets = true;
  fresh.span = entry.span;
  if (!entry.sets) entry.sets = 1;
  plain_section(fresh, session, entry).entries.push_back(std::move(entry));
}

bool holds_piece(const Draft& draft) {
  return draft.has_work() || draft.has_clock() || draft.block.rounds;
}

/// Whether the entry begins a piece of its own below the work that stands, of which `last` is the last; may
/// be null.
bool begins_piece(const Draft& draft, const Entry* last, const Entry& entry) {
  const bool joins = last != nullptr && last->superset_with_next;
  const bool lettered_before = last != nullptr && last->letter != 0;
  if (entry.sets || entry.share_sets) {
    const bool grouped = joins || (draft.said.superset && !lettered_before);
    return !grouped && holds_piece(draft);
  }
  if (last == nullptr || !draft.has_work()) return false;
  const bool sets_before = (draft.said.sets || draft.said.superset) && !draft.block.sets &&
                           (lettered_before || !draft.said.superset);
  const bool other_effort = draft.said.max_effort && last->amount && entry.line != last->line &&
                            !std::holds_alternative<domain::Max>(last->amount->values.front());
  return (sets_before && !joins) || other_effort;
}

}  // namespace

bool give_counts_to_name_above(Session& session, const Numbers& numbers) {
  Draft& draft = session.draft();
  Entry* last = name_above(session, draft);
  if (last == nullptr || draft.scheme || session.line->after_blank) return false;
  Entry counted = *last;
  counted.amount = numbers;
  counted.name_first = true;
  if (!list_of_sets(session, draft, counted)) return false;
  counted.share_sets = static_cast<int>(numbers.values.size());
  *last = std::move(counted);
  draft.said.sets = true;
  return true;
}

void place_entry(Session& session, Entry entry) {
  Draft* draft = &session.draft();
  hand_down(session, *draft, entry);
  if (entry.item.movement) {
    session.lift = entry.item.movement;
    session.lift_in_sets = entry.lift;
  }
  if (draft->said.every || draft->said.stations) {
    if (draft->span.line == 0) draft->span = entry.span;
    return place_in_slot(session, *draft, std::move(entry));
  }
  if (entry.continues) return place_continued(session, *draft, std::move(entry));
  const bool in_sets = session.letter_digit || entry.sets || draft->block.sets || draft->said.sets;
  if (session.letter != 0 && in_sets && !draft->said.amrap) return place_lettered(session, std::move(entry));
  if (entry.amount && list_of_sets(session, *draft, entry))
    entry.share_sets = static_cast<int>(entry.amount->values.size());
  if (entry.sets && repeats_along(session, *draft, entry)) {
    if (holds_piece(*draft)) draft = &session.fresh(entry.span);
    draft->block.rounds = entry.sets;
    draft->said.repeats = true;
    entry.sets.reset();
  }
  if (begins_piece(*draft, draft->last_entry(), entry)) draft = &session.fresh(entry.span);
  if (entry.sets || entry.share_sets) draft->said.sets = true;
  if (draft->span.line == 0) draft->span = entry.span;
  Section& section = plain_section(*draft, session, entry);
  section.entries.push_back(std::move(entry));
}

}  // namespace repwright::board
