#include <fmt/format.h>

#include <algorithm>

#include "board/assembly.hpp"
#include "board/draft_kind.hpp"
#include "board/own_fields.hpp"

namespace repwright::board {
namespace {

using base::Duration;
using domain::Block;
using domain::BlockKind;
using domain::Item;
using domain::Score;
using domain::Unit;

/// Lines become stations; `12 x 40/20` over four of them is three laps.
void make_stations(Draft& draft) {
  if (!draft.slots.empty()) return;
  for (const Section& section : draft.sections)
    for (const Entry& entry : section.entries) draft.slots.push_back({entry});
  draft.sections.clear();
  const int stations = static_cast<int>(draft.slots.size());
  if (draft.times_of_work && stations > 0 && *draft.times_of_work % stations == 0)
    draft.block.rounds = *draft.times_of_work / stations;
}

Unit unit_of_single_max(const std::vector<Item>& items) {
  return items.empty() ? Unit::Reps : items.front().unit;
}

Score max_score(Unit unit, bool summed) {
  if (unit == Unit::Kilocalories) return summed ? Score::KcalSum : Score::Kcal;
  if (unit == Unit::Metres) return summed ? Score::DistanceSum : Score::Distance;
  return summed ? Score::RepsSum : Score::Reps;
}

Score interval_score(const Block& block) {
  if (!block.work) return Score::Times;
  if (!block.children.empty()) return Score::RoundsReps;
  const auto max = [](const Item& item) { return std::holds_alternative<domain::Max>(item.amount); };
  const auto held = [&](const Item& item) { return item.unit == Unit::Seconds && !max(item); };
  if (std::ranges::all_of(block.items, held)) return Score::None;
  if (block.items.size() == 1 && max(block.items.front())) return max_score(block.items.front().unit, true);
  if (std::ranges::any_of(block.items, max)) {
    const auto first = std::ranges::find_if(block.items, max);
    return max_score(first->unit, true);
  }
  return Score::RoundsReps;
}

/// A list of counts gives its length as the rounds.
int rounds_of(const Draft& draft, const Block& block) {
  if (block.rounds) return *block.rounds;
  std::size_t longest =
      draft.scheme && draft.scheme->joined == Joined::Dashes ? draft.scheme->values.size() : 1;
  for (const Item& item : block.items)
    if (const auto* list = std::get_if<domain::PerSet>(&item.amount))
      longest = std::max(longest, list->amounts.size());
  return static_cast<int>(longest);
}

double held_seconds(const std::vector<Item>& items) {
  double total = 0;
  for (const Item& item : items)
    if (const auto* number = std::get_if<double>(&item.amount);
        number != nullptr && item.unit == Unit::Seconds)
      total += *number;
  return total;
}

void check_cap(Session& session, const Draft& draft, const Block& block) {
  if (!block.cap) return;
  const double rounds = std::max(1, block.rounds.value_or(1));
  double fixed = held_seconds(block.items) * rounds;
  for (const Block& child : block.children)
    fixed += held_seconds(child.items) * std::max(1, child.rounds.value_or(1));
  if (block.rest_rule && block.rest_rule->kind == domain::RestKind::Fixed)
    fixed += block.rest_rule->length.si() * (rounds - 1);
  if (const auto length = written_length(block)) fixed = std::max(fixed, length->si());
  if (fixed <= block.cap->si()) return;
  const domain::Span span = draft.cap_span.value_or(draft.span);
  session.remarks.add({"cap-too-short", span,
                       fmt::format("`{}` is shorter than the {:.0f} s that are fixed in the piece",
                                   session.kept(span), fixed),
                       "a cap is longer than what nobody can shorten"});
}

void finish_duties(Session& session, Places& places, const Draft& draft, Block& block) {
  const EntryRules rules{.block = block, .draft = Draft{}};
  if (draft.interrupt_every) {
    domain::Interrupt duty;
    duty.every = *draft.interrupt_every;
    duty.first = draft.interrupt_first.value_or(Duration{});
    duty.items = finish_entries(session, places, draft.interrupt, rules);
    block.interrupt = std::move(duty);
  }
  block.penalty = finish_entries(session, places, draft.penalty, rules);
  block.after_fail = finish_entries(session, places, draft.after_fail, rules);
}

std::vector<Section> filled(const Draft& draft) {
  std::vector<Section> sections;
  for (const Section& section : draft.sections)
    if (!section.entries.empty()) sections.push_back(section);
  return sections;
}

BlockKind child_kind(Role role) {
  if (role == Role::Rounds) return BlockKind::Rounds;
  return role == Role::AnyOrder ? BlockKind::Partition : BlockKind::Once;
}

}  // namespace

void fill_work(Session& session, Places& places, Draft& draft, Block& block, const EntryRules& rules) {
  std::vector<Section> sections = filled(draft);
  const bool parted = std::ranges::any_of(sections, [](const Section& s) { return s.role == Role::Once; });
  const bool counted =
      block.rounds.value_or(1) > 1 || draft.said.amrap || block.work.has_value() || draft.scheme;
  for (Section& section : sections)
    if (section.role == Role::Plain && parted && counted) {
      section.role = Role::Rounds;
      section.rounds = draft.said.amrap || block.work ? std::nullopt : std::optional(rounds_of(draft, block));
    }
  const bool one = sections.size() == 1 && sections.front().role != Role::AnyOrder &&
                   !(sections.front().role == Role::Once && draft.said.amrap);
  const bool all_once = std::ranges::all_of(
      sections, [](const Section& s) { return s.role == Role::Plain || s.role == Role::Once; });
  if (one || (all_once && !(parted && counted))) {
    for (const Section& section : sections) {
      std::vector<Item> items = finish_entries(session, places, section.entries, rules);
      block.items.insert(block.items.end(), items.begin(), items.end());
    }
    if (one && sections.front().role == Role::Rounds && sections.front().rounds && !block.rounds)
      block.rounds = sections.front().rounds;
    return;
  }
  for (const Section& section : sections) {
    const BlockKind kind = child_kind(section.role);
    if (kind == BlockKind::Once && !block.children.empty() && block.children.back().kind == BlockKind::Once) {
      std::vector<Item> more = finish_entries(session, places, section.entries, rules);
      block.children.back().items.insert(block.children.back().items.end(), more.begin(), more.end());
      continue;
    }
    Block child;
    child.kind = kind;
    child.id = places.block(section.entries.front().span);
    child.rounds = section.rounds;
    child.items = finish_entries(session, places, section.entries, rules);
    block.children.push_back(std::move(child));
  }
  if (!block.work && !block.rest_rule) block.rounds.reset();
}

namespace {

/// What an interval piece rests: as written, or none where nothing is said.
void settle_interval_rest(Block& block) {
  if (!block.work) return;
  if (!block.rest) block.rest = Duration{};
  if (!block.rest_rule) return;
  if (block.rest_rule->between_only) {
    block.rest.reset();
  } else {
    block.rest = block.rest_rule->length;
    block.rest_rule.reset();
  }
}

void settle_relay(Block& block) {
  if (!block.turns_each) block.turns_each = block.rounds.value_or(1);
  block.rounds.reset();
  if (block.team_sizes.empty()) block.team_sizes = {2};
  for (Item& item : block.items) item.share.reset();
}

void settle_for_distance(Block& block) {
  for (Item& item : block.items) {
    item.amount = domain::Max{};
    item.unit = Unit::Metres;
  }
}

/// The most sets of any entry, for a part that people may leave out.
std::optional<int> most_sets(const Draft& draft, std::optional<int> most) {
  for (const Section& section : draft.sections)
    for (const Entry& entry : section.entries)
      if (entry.sets) most = std::max(most.value_or(0), *entry.sets);
  return most;
}

/// Clock, rounds and score of a piece, by its kind. `time`: what its clock or its heading gives it.
void settle_kind(const Draft& draft, Block& block, std::optional<Duration> time) {
  switch (block.kind) {
    case BlockKind::ForTime:
      if (block.children.empty()) block.rounds = rounds_of(draft, block);
      if (!block.cap) block.cap = time;
      block.score = Score::Time;
      break;
    case BlockKind::Amrap:
    case BlockKind::Ladder:
      block.duration = time;
      block.score = block.kind == BlockKind::Amrap ? Score::RoundsReps : Score::RungReps;
      block.rounds.reset();
      break;
    case BlockKind::Intervals:
      if (!block.rounds) block.rounds = rounds_of(draft, block);
      settle_interval_rest(block);
      block.score = interval_score(block);
      break;
    case BlockKind::Partner:
      block.score = block.duration ? Score::RoundsReps : Score::Time;
      break;
    case BlockKind::Relay:
      settle_relay(block);
      block.score = Score::Place;
      break;
    case BlockKind::Build:
      block.duration = time;
      block.score = Score::Load;
      break;
    case BlockKind::Accumulate:
      block.score = Score::Time;
      break;
    case BlockKind::ForDistance:
      block.duration = time;
      settle_for_distance(block);
      block.score = Score::Distance;
      break;
    case BlockKind::MaxEffort:
      block.duration = time;
      block.score = max_score(unit_of_single_max(block.items), false);
      break;
    case BlockKind::Optional:
      if (draft.said.sets) block.sets = most_sets(draft, block.sets);
      break;
    default:
      break;
  }
}

void finish_clocked(Session& session, Places& places, const Chapter& chapter, Draft& draft, Block& block) {
  const bool as_many = draft.said.max_effort || draft.said.for_distance ||
                       block.kind == BlockKind::MaxEffort || block.kind == BlockKind::ForDistance;
  if (block.kind == BlockKind::Partner && !block.cap && draft.clock) block.duration = draft.clock;
  if (block.kind == BlockKind::Accumulate && draft.clock)
    draft.scheme = Numbers{.values = {draft.clock->si()}, .unit = Unit::Seconds, .span = draft.span};
  if (block.kind == BlockKind::Partner) settle_partners(session, draft, block);
  const EntryRules rules{.block = block, .draft = draft, .as_many = as_many};
  if (!fill_parts(session, places, draft, block, rules)) fill_work(session, places, draft, block, rules);
  settle_kind(draft, block, draft.clock ? draft.clock : chapter.length());
}

/// `back squat 5x5 in 12 min`: what the hour gives work that no clock runs for.
void keep_minutes(const Draft& draft, std::vector<Block>& blocks) {
  if (blocks.size() == 1 && at_nobodys_clock(blocks.front().kind) && !blocks.front().duration)
    blocks.front().duration = draft.clock;
}

void check_work(Session& session, const Draft& draft, const Block& block) {
  const bool needs = block.kind != BlockKind::Rest && block.kind != BlockKind::Note;
  if (needs && block.items.empty() && block.children.empty())
    session.remarks.add({"no-work", draft.span, fmt::format("`{}` has no work", session.kept(draft.span)),
                         "write what is done, one line each"});
  const bool endless = (block.kind == BlockKind::Amrap || block.kind == BlockKind::Ladder ||
                        block.kind == BlockKind::ForDistance || block.kind == BlockKind::MaxEffort) &&
                       !block.duration && !block.cap;
  if (endless)
    session.remarks.add({"no-length", draft.span,
                         fmt::format("`{}` does not say how long it runs", session.kept(draft.span)),
                         "write the minutes"});
}

std::string joined_words(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += "; ";
    text += word;
  }
  return text;
}

}  // namespace

std::vector<Block> finish_draft(Session& session, Places& places, const Chapter& chapter, Draft& draft) {
  if (draft.untouched() && draft.block == Block{}) return {};
  draft.said.quiet = chapter.part == Part::WarmUp || chapter.part == Part::CoolDown;
  const std::vector<Entry> chalked = all_entries(draft);
  if (const auto time = time_at_each(session, draft, chalked)) {
    draft.block.work = time;
    draft.said.stations |= chalked.size() > 1;
  }
  const BlockKind kind = kind_of(chapter, draft);
  if (draft.span.line == 0) {
    const std::vector<Entry> entries = all_entries(draft);
    draft.span = entries.empty() ? chapter.span : entries.front().span;
  }
  std::vector<Block> blocks;
  const std::optional<Duration> window = chapter.length();
  if (kind == BlockKind::Sets) {
    blocks = finish_sets(session, places, draft);
    if (blocks.empty())
      session.remarks.add({"no-work", draft.span, fmt::format("`{}` has no work", session.kept(draft.span)),
                           "write the lift"});
  } else if (kind == BlockKind::Every) {
    blocks = {finish_every(session, places, draft, window)};
  } else if (kind == BlockKind::Circuit) {
    make_stations(draft);
    blocks = {finish_circuit(session, places, draft, window)};
  } else {
    Block block = draft.block;
    block.kind = kind;
    block.id = places.block(draft.span);
    if (kind == BlockKind::Rest || kind == BlockKind::Note) {
      block.duration = draft.clock;
      if (kind == BlockKind::Note && draft.texts.empty()) {
        if (draft.clock && !draft.has_work()) return {};
        session.remarks.add({"no-work", draft.span, fmt::format("`{}` has no work", session.kept(draft.span)),
                             "write what is done, one line each"});
        block.kind = BlockKind::ForTime;
        block.rounds = 1;
        block.score = Score::Time;
        block.duration.reset();
      }
    } else {
      finish_clocked(session, places, chapter, draft, block);
      check_work(session, draft, block);
    }
    blocks = {std::move(block)};
  }
  keep_minutes(draft, blocks);
  for (Block& block : blocks) {
    finish_duties(session, places, draft, block);
    block.text = joined_words(draft.texts);
    check_cap(session, draft, block);
    if (drop_foreign_fields(block))
      session.remarks.add({"rule-of-another-kind", draft.span,
                           fmt::format("`{}` is followed by a rule that such a piece does not have",
                                       session.kept(draft.span)),
                           "write the rule below the piece that it belongs to"});
  }
  return blocks;
}

}  // namespace repwright::board
