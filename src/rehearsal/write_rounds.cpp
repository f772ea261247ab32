#include <algorithm>
#include <cmath>
#include <variant>

#include "rehearsal/partition.hpp"
#include "rehearsal/write_piece.hpp"

namespace repwright::rehearsal {

bool takes_time(const ScriptDraft& draft, int from) {
  const std::vector<Op>& ops = draft.ops();
  return std::any_of(ops.begin() + from, ops.end(), [](const Op& op) {
    return op.kind == OpKind::MaxSet || op.kind == OpKind::Pool ||
           ((op.kind == OpKind::Work || op.kind == OpKind::Rest) && op.amount > 0);
  });
}

namespace {

using domain::Block;
using domain::BlockKind;
using domain::Item;

constexpr int most_rungs = 100;
constexpr double quickest_unit = 0.2;  // s: bounds how many rungs a clock can hold

void write_round(ScriptDraft& draft, const std::vector<Item>& items, int round) {
  for (const Item& item : items) draft.work(item, {.round = round});
  draft.mark(OpKind::RoundDone);
}

/// Rounds until the deadline: those with counts of their own first, then the last one over and over.
void write_loop(ScriptDraft& draft, const std::vector<Item>& items) {
  if (items.size() == 1 && draft.endless(items.front())) {
    draft.work(items.front(), {.by_the_clock = true});
    return;
  }
  const int listed = listed_rounds(items);
  for (int round = 0; round + 1 < listed; ++round) write_round(draft, items, round);
  const int start = draft.here();
  write_round(draft, items, listed - 1);
  if (takes_time(draft, start)) draft.add({.kind = OpKind::Jump, .target = start});
  draft.script().step_rounds = 0;
}

/// Climbing counts, unrolled as far as any clock can go.
void write_rungs(ScriptDraft& draft, const std::vector<Item>& items) {
  const double end = piece_end(draft.context().piece).value_or(1200);
  double quickest = 0;
  for (int round = 0; round < most_rungs && quickest < end; ++round) {
    double units = 0;
    for (const Item& item : items) units += draft.units(item, {.round = round});
    if (units <= 0) break;
    quickest += units * quickest_unit;
    write_round(draft, items, round);
  }
  draft.script().step_rounds = 0;
}

bool climbs(const ScriptDraft& draft, const std::vector<Item>& items) {
  return std::ranges::any_of(items, [&](const Item& item) {
    return std::holds_alternative<domain::Climb>(draft.fitted(item).amount);
  });
}

void write_parts(ScriptDraft& draft, const std::vector<Item>& items) {
  std::vector<Portion> portions;
  for (const Item& item : items) {
    const double amount = draft.units(item, {});
    if (std::isfinite(amount) && amount > 0) portions.push_back({amount, draft.best_on(draft.task(item))});
  }
  const int parts = even_parts(portions);
  for (int part = 0; part < parts; ++part) {
    for (const Item& item : items) {
      const double amount = draft.units(item, {});
      const double share = part_of(amount, part, parts);
      if (std::isfinite(amount) && share > 0)
        draft.add({.kind = OpKind::Work, .amount = share, .task = draft.task(item)});
    }
    draft.mark(OpKind::RoundDone);
  }
}

int rounds_for(const ScriptDraft& draft, const Block& block) {
  if (const auto own = draft.own_rounds()) return *own;
  const std::optional<int> level = draft.level();
  int rounds = block.rounds.value_or(listed_rounds(block.items));
  if (!level || static_cast<std::size_t>(*level) >= block.levels.size()) return rounds;
  for (const domain::LevelRule& rule : block.level_rules)
    if (rule.level == block.levels[static_cast<std::size_t>(*level)]) rounds = rule.rounds;
  return rounds;
}

void write_child(ScriptDraft& draft, const Block& child, const Seat& seat) {
  const std::vector<Item> items = round_order(child.items, draft.context().odd_start, seat);
  switch (child.kind) {
    case BlockKind::Optional:
    case BlockKind::Note:
      return;
    case BlockKind::Rest:
      return draft.rest(child.duration.value_or(base::Duration{}).si());
    case BlockKind::Once:
      for (const Item& item : items) draft.work(item);
      return;
    case BlockKind::Partition:
      return write_parts(draft, items);
    case BlockKind::Rounds:
      if (climbs(draft, items)) return write_rungs(draft, items);
      if (!child.rounds && piece_end(draft.context().piece)) return write_loop(draft, items);
      break;
    default:
      break;
  }
  const int rounds = child.rounds.value_or(listed_rounds(items));
  for (int round = 0; round < rounds && !items.empty(); ++round) write_round(draft, items, round);
  for (const Block& inner : child.children) write_child(draft, inner, seat);
}

/// Forms that go round and round until their clock is down.
bool until_the_clock(const Block& block) {
  return block.kind == BlockKind::Amrap || block.kind == BlockKind::ForDistance ||
         block.kind == BlockKind::MaxEffort;
}

}  // namespace

std::optional<double> piece_end(const timetable::Piece& piece) {
  if (piece.length) return piece.length->si();
  if (piece.cap) return piece.cap->si();
  return std::nullopt;
}

int listed_rounds(const std::vector<Item>& items) {
  std::size_t most = 1;
  for (const Item& item : items)
    if (const auto* list = std::get_if<domain::PerSet>(&item.amount))
      most = std::max(most, list->amounts.size());
  return static_cast<int>(most);
}

std::vector<Item> round_order(const std::vector<Item>& items,
                              const std::optional<domain::MovementId>& odd_start, const Seat& seat) {
  std::vector<Item> order = items;
  if (!odd_start || seat.in_heat % 2 == 0) return order;
  const auto first = std::ranges::find(order, odd_start, &Item::movement);
  if (first != order.end()) std::rotate(order.begin(), first, order.end());
  return order;
}

void write_rounds(ScriptDraft& draft, const Seat& seat) {
  const Block& block = draft.context().block;
  const int stop = draft.deadline(piece_end(draft.context().piece));
  const std::vector<Item> items = round_order(block.items, draft.context().odd_start, seat);
  if (!block.children.empty()) {
    for (const Block& child : block.children) write_child(draft, child, seat);
  } else if (block.kind == BlockKind::Partition) {
    write_parts(draft, items);
  } else if (block.kind == BlockKind::Ladder || climbs(draft, items)) {
    write_rungs(draft, items);
  } else if (until_the_clock(block) && stop >= 0) {
    write_loop(draft, items);
  } else {
    const int rounds = rounds_for(draft, block);
    for (int round = 0; round < rounds && !items.empty(); ++round) write_round(draft, items, round);
  }
  if (stop >= 0) draft.land(stop);
}

}  // namespace repwright::rehearsal
