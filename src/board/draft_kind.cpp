#include "board/draft_kind.hpp"

#include <algorithm>

namespace repwright::board {

using base::Duration;
using domain::BlockKind;
using domain::Unit;

std::vector<Entry> all_entries(const Draft& draft) {
  std::vector<Entry> all;
  for (const Section& section : draft.sections)
    all.insert(all.end(), section.entries.begin(), section.entries.end());
  for (const auto& slot : draft.slots) all.insert(all.end(), slot.begin(), slot.end());
  return all;
}

std::optional<Duration> time_at_each(const Session& session, const Draft& draft,
                                     const std::vector<Entry>& entries) {
  const bool clocked = draft.has_clock() && !draft.block.rest_rule;
  const std::size_t least = std::ranges::any_of(entries, &Entry::max_in_time) ? 1 : 3;
  if (entries.size() < least || !draft.block.rounds || draft.said.for_time || draft.block.work || clocked ||
      draft.sections.size() != 1 || !draft.block.team_sizes.empty())
    return std::nullopt;
  const auto seconds = [](const Entry& entry) -> std::optional<double> {
    if (entry.sets || !entry.amount || entry.amount->unit != Unit::Seconds) return std::nullopt;
    return entry.amount->plain();
  };
  const auto first = seconds(entries.front());
  if (!first || !std::ranges::all_of(entries, [&](const Entry& e) { return seconds(e) == first; }))
    return std::nullopt;
  const bool counted = std::ranges::any_of(entries, [&](const Entry& entry) {
    if (entry.max_in_time && entry.unit) return true;
    const domain::Movement* movement =
        entry.item.movement ? session.names.movement(*entry.item.movement) : nullptr;
    return movement != nullptr && movement->default_unit == Unit::Reps;
  });
  return counted ? std::optional(Duration::from_si(*first)) : std::nullopt;
}

namespace {

bool is_max(const Entry& entry) {
  return entry.amount && entry.amount->values.size() == 1 &&
         std::holds_alternative<domain::Max>(entry.amount->values.front());
}

/// `max burpees in 75 s`, a finisher's `max ...`: nothing but as much as possible within a time.
bool is_max_effort(const Chapter& chapter, const Draft& draft, const std::vector<Entry>& entries) {
  if (entries.empty() || draft.block.work || draft.block.rounds) return false;
  // `3 min AMRAP: burpees`: one movement without an amount is as much of it as possible.
  if (draft.said.amrap && entries.size() == 1 && !entries.front().amount && !entries.front().sets &&
      !draft.scheme && draft.clock)
    return true;
  const bool all_max = std::ranges::all_of(entries, is_max);
  const bool window = chapter.from && chapter.to;
  return all_max && (draft.clock || draft.said.max_effort || (window && !draft.has_clock()));
}

/// `5 rounds, 40/20` over a list without amounts: each line is a station.
bool is_round_of_stations(const Draft& draft, const std::vector<Entry>& entries) {
  if (!draft.block.work || entries.size() < 2 || !draft.block.team_sizes.empty()) return false;
  return std::ranges::all_of(entries, [](const Entry& entry) { return !entry.amount && !entry.sets; });
}

bool climbs(const Draft& draft) {
  const auto open = [](const Entry& entry) { return entry.amount && entry.amount->open; };
  if (draft.said.ladder || (draft.scheme && draft.scheme->open)) return true;
  const std::vector<Entry> entries = all_entries(draft);
  return std::ranges::any_of(entries, open);
}

}  // namespace

bool at_nobodys_clock(BlockKind kind) {
  return kind == BlockKind::Sets || kind == BlockKind::Superset || kind == BlockKind::Once ||
         kind == BlockKind::Rounds;
}

BlockKind kind_of(const Chapter& chapter, const Draft& draft) {
  const Said& said = draft.said;
  const std::vector<Entry> entries = all_entries(draft);
  if (said.rest) return BlockKind::Rest;
  if (entries.empty() && draft.slots.empty() && !draft.has_clock() && draft.block.team_sizes.empty() &&
      !draft.block.rounds && !draft.block.sets)
    return BlockKind::Note;
  if (said.optional) return BlockKind::Optional;
  if (said.stations || is_round_of_stations(draft, entries)) return BlockKind::Circuit;
  if (said.relay) return BlockKind::Relay;
  if (!draft.block.team_sizes.empty()) return BlockKind::Partner;
  if (said.build) return BlockKind::Build;
  if (said.accumulate) return BlockKind::Accumulate;
  if (said.for_distance) return BlockKind::ForDistance;
  if (is_max_effort(chapter, draft, entries)) return BlockKind::MaxEffort;
  if (said.every) return BlockKind::Every;
  if (draft.block.work || draft.block.rest_rule || said.repeats || said.each_for_time)
    return BlockKind::Intervals;
  if (climbs(draft)) return BlockKind::Ladder;
  if (said.amrap) return BlockKind::Amrap;
  if (said.sets || said.superset) return BlockKind::Sets;
  const bool quiet_part = chapter.part == Part::WarmUp || chapter.part == Part::CoolDown ||
                          (chapter.part == Part::Skill && !said.for_time && !draft.block.cap);
  if ((quiet_part && !said.for_time) || (said.not_for_time && draft.sections.size() < 2))
    return draft.block.rounds ? BlockKind::Rounds : BlockKind::Once;
  return BlockKind::ForTime;
}

}  // namespace repwright::board
