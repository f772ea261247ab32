#include <algorithm>
#include <vector>

#include "rehearsal/write_piece.hpp"

namespace repwright::rehearsal {

namespace {

using domain::Block;
using domain::Item;
using timetable::Phase;
using timetable::PhaseKind;

std::vector<Phase> work_phases(const timetable::Piece& piece) {
  std::vector<Phase> work;
  std::ranges::copy_if(piece.phases, std::back_inserter(work),
                       [](const Phase& phase) { return phase.kind == PhaseKind::Work; });
  return work;
}

double seconds(base::SimTime time) {
  return time.duration().si();
}

/// Opens one interval of the clock; land the answer where it ends.
int open_interval(ScriptDraft& draft, const Phase& phase) {
  draft.wait_until(seconds(phase.start));
  draft.mark(OpKind::Mark);
  return draft.deadline(seconds(phase.end));
}

/// The work of one slot: a round is done when all that has a count is done.
void write_slot(ScriptDraft& draft, const std::vector<Item>& items, int round) {
  bool counted = false;
  for (const Item& item : items) {
    if (draft.endless(item) && !counted) {
      draft.mark(OpKind::RoundDone);
      counted = true;
    }
    draft.work(item, {.round = round, .by_the_clock = draft.endless(item)});
  }
  if (!counted) draft.mark(OpKind::RoundDone);
}

int slot_round(const Phase& phase, const Block& block, std::size_t index) {
  return block.slots.size() > 1 ? phase.round : static_cast<int>(index);
}

/// Whoever has missed once: the price in every interval that is left.
void write_failed(ScriptDraft& draft, const std::vector<Phase>& work, const std::vector<int>& misses) {
  const Block& block = draft.context().block;
  std::vector<int> starts;
  for (std::size_t i = 1; i < work.size() && !block.after_fail.empty(); ++i) {
    starts.push_back(draft.here());
    draft.wait_until(seconds(work[i].start));
    const int stop = draft.deadline(seconds(work[i].end));
    for (const Op& op : draft.side_work(block.after_fail)) draft.add(op);
    draft.land(stop);
  }
  const int end = draft.add({.kind = OpKind::End});
  for (std::size_t i = 0; i < misses.size(); ++i)
    draft.script().ops[static_cast<std::size_t>(misses[i])].target = i < starts.size() ? starts[i] : end;
}

/// Work in one timed interval: open lines take turns by interval, counted ones go round until the bell.
void write_interval_work(ScriptDraft& draft, int round) {
  const std::vector<Item>& items = draft.context().block.items;
  const auto open = [&](const Item& item) {
    return draft.endless(item) || draft.fitted(item).unit == domain::Unit::Seconds;
  };
  if (!items.empty() && std::ranges::all_of(items, open)) {
    const auto turn = static_cast<std::size_t>(round) % items.size();
    draft.work(items[turn], {.round = round, .by_the_clock = true});
    return;
  }
  const int start = draft.here();
  bool works = false;
  for (const Item& item : items) {
    draft.work(item, {.round = round, .by_the_clock = draft.endless(item)});
    works = works || draft.units(item, {.round = round}) > 0;
  }
  draft.mark(OpKind::RoundDone);
  if (works) draft.add({.kind = OpKind::Jump, .target = start});
}

void write_children_interval(ScriptDraft& draft) {
  for (const Block& child : draft.context().block.children) {
    const bool loops = child.kind == domain::BlockKind::Rounds && !child.rounds;
    const int start = draft.here();
    bool works = false;
    for (int round = 0; round < child.rounds.value_or(1); ++round) {
      for (const Item& item : child.items) {
        draft.work(item, {.round = round, .by_the_clock = draft.endless(item)});
        works = works || draft.units(item, {}) > 0;
      }
      if (child.kind == domain::BlockKind::Rounds) draft.mark(OpKind::RoundDone);
    }
    if (loops && works) draft.add({.kind = OpKind::Jump, .target = start});
  }
}

void write_clock_intervals(ScriptDraft& draft) {
  const Block& block = draft.context().block;
  int round = 0;
  for (const Phase& phase : work_phases(draft.context().piece)) {
    const int stop = open_interval(draft, phase);
    if (block.carry_over && round > 0)
      draft.mark(OpKind::Resume);
    else if (!block.children.empty())
      write_children_interval(draft);
    else
      write_interval_work(draft, round);
    draft.land(stop);
    draft.mark(OpKind::Lap);
    ++round;
  }
  draft.script().step_rounds = 0;
}

void write_rest(ScriptDraft& draft, const domain::RestRule& rule) {
  switch (rule.kind) {
    case domain::RestKind::Fixed:
      return draft.rest(rule.length.si());
    case domain::RestKind::Ratio:
      draft.add({.kind = OpKind::RestRatio, .amount = rule.work > 0 ? rule.rest / rule.work : 1});
      return;
    case domain::RestKind::Free:
      return draft.mark(OpKind::RestReady);
  }
}

void write_private_round(ScriptDraft& draft, int round) {
  const Block& block = draft.context().block;
  for (const Item& item : block.items) draft.work(item, {.round = round});
  for (const Block& child : block.children)
    for (int inner = 0; inner < child.rounds.value_or(1); ++inner)
      for (const Item& item : child.items) draft.work(item, {.round = inner});
  draft.mark(OpKind::RoundDone);
}

void write_private_intervals(ScriptDraft& draft) {
  const Block& block = draft.context().block;
  const int stop = draft.deadline(piece_end(draft.context().piece));
  const int rounds = block.rounds.value_or(listed_rounds(block.items));
  for (int round = 0; round < rounds; ++round) {
    draft.mark(OpKind::Mark);
    write_private_round(draft, round);
    draft.mark(OpKind::Lap);
    if (round + 1 < rounds) write_rest(draft, block.rest_rule.value_or(domain::RestRule{}));
  }
  if (stop >= 0) draft.land(stop);
}

}  // namespace

void write_every(ScriptDraft& draft, const Seat& seat) {
  const Block& block = draft.context().block;
  const std::vector<Phase> work = work_phases(draft.context().piece);
  const bool out_after_miss = block.score == domain::Score::LastFullMinute || !block.after_fail.empty();
  std::vector<int> misses;
  for (std::size_t i = 0; i < work.size(); ++i) {
    const int stop = open_interval(draft, work[i]);
    const std::vector<Item>& slot = block.slots[static_cast<std::size_t>(work[i].slot)];
    write_slot(draft, round_order(slot, draft.context().odd_start, seat), slot_round(work[i], block, i));
    draft.mark(OpKind::NoDeadline);
    if (out_after_miss)
      misses.push_back(stop);
    else
      draft.land(stop);
    draft.mark(OpKind::Lap);
  }
  draft.script().step_rounds = static_cast<int>(work.size());
  if (!out_after_miss) return;
  draft.add({.kind = OpKind::End});
  write_failed(draft, work, misses);
}

void write_intervals(ScriptDraft& draft) {
  if (draft.context().piece.phases.empty())
    write_private_intervals(draft);
  else
    write_clock_intervals(draft);
}

void write_circuit(ScriptDraft& draft, const Seat& seat) {
  const Block& block = draft.context().block;
  const int stations = static_cast<int>(block.slots.size());
  int lap = -1;
  int slot = -1;
  for (const Phase& phase : draft.context().piece.phases) {
    const bool first = phase.round != lap || phase.slot != slot;
    lap = phase.round;
    slot = phase.slot;
    if (!first || slot >= stations) continue;  // time to rotate, or between laps
    const auto& items = block.slots[static_cast<std::size_t>((seat.in_heat + slot) % stations)];
    if (items.empty()) continue;
    const int stop = open_interval(draft, phase);
    const auto turn = static_cast<std::size_t>(lap) % items.size();
    draft.work(items[turn], {.round = lap, .by_the_clock = true});
    draft.land(stop);
    draft.mark(OpKind::Lap);
    draft.mark(OpKind::RoundDone);
  }
  draft.script().step_rounds = stations * std::max(1, block.laps.value_or(1));
}

}  // namespace repwright::rehearsal
