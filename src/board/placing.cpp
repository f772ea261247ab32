#include <algorithm>

#include "board/session.hpp"

/// Where a line of work goes: into the round, a slot, a station, a set.
namespace repwright::board {
namespace {

/// The last lift named above, for lines that go on with it.
const Entry* lift_above(Session& session) {
  for (auto chapter = session.chapters.rbegin(); chapter != session.chapters.rend(); ++chapter)
    for (auto draft = chapter->drafts.rbegin(); draft != chapter->drafts.rend(); ++draft)
      for (auto section = draft->sections.rbegin(); section != draft->sections.rend(); ++section)
        for (auto entry = section->entries.rbegin(); entry != section->entries.rend(); ++entry)
          if (entry->item.movement) return &*entry;
  return nullptr;
}

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
  const bool own = stations ? (apart && !session.plus) || draft.slots.empty()
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

}  // namespace

void place_entry(Session& session, Entry entry) {
  Draft* draft = &session.draft();
  hand_down(session, *draft, entry);
  if (draft->said.every || draft->said.stations) {
    if (draft->span.line == 0) draft->span = entry.span;
    return place_in_slot(session, *draft, std::move(entry));
  }
  if (entry.continues) {
    const Entry* lift = lift_above(session);
    if (lift != nullptr) {
      entry.item.movement = lift->item.movement;
      if (!entry.sets && !draft->said.build) {
        Entry* last = draft->last_entry();
        if (last != nullptr && !last->amount && !last->sets) {
          entry.continues = false;
          if (!entry.item.load_share) entry.item.load_share = last->item.load_share;
          *last = std::move(entry);
          last->continues = true;
          draft->said.sets = true;
          return;
        }
        if (draft->said.sets) {
          plain_section(*draft, session, entry).entries.push_back(std::move(entry));
          return;
        }
      }
    }
    draft = &session.fresh(entry.span);
    draft->said.sets = true;
    draft->span = entry.span;
    if (!entry.sets) entry.sets = 1;
    plain_section(*draft, session, entry).entries.push_back(std::move(entry));
    return;
  }
  const bool in_sets = session.letter_digit || entry.sets || draft->block.sets || draft->said.sets;
  if (session.letter != 0 && in_sets && !draft->said.amrap) return place_lettered(session, std::move(entry));
  if (list_of_sets(session, *draft, entry)) entry.share_sets = static_cast<int>(entry.amount->values.size());
  Entry* last = draft->last_entry();
  const bool joins = last != nullptr && last->superset_with_next;
  const bool lettered_before = last != nullptr && last->letter != 0;
  if (entry.sets || entry.share_sets) {
    const bool grouped = joins || (draft->said.superset && !lettered_before);
    if (!grouped && (draft->has_work() || draft->has_clock() || draft->block.rounds))
      draft = &session.fresh(entry.span);
    draft->said.sets = true;
  } else if ((draft->said.sets || draft->said.superset) && draft->has_work() && !draft->block.sets &&
             !joins && (lettered_before || !draft->said.superset)) {
    draft = &session.fresh(entry.span);
  } else if (draft->said.max_effort && draft->has_work() && last->amount && entry.line != last->line &&
             !std::holds_alternative<domain::Max>(last->amount->values.front())) {
    draft = &session.fresh(entry.span);
  }
  if (draft->span.line == 0) draft->span = entry.span;
  Section& section = plain_section(*draft, session, entry);
  section.entries.push_back(std::move(entry));
}

}  // namespace repwright::board
