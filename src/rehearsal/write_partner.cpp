#include <cmath>
#include <cstddef>
#include <map>
#include <numeric>
#include <utility>
#include <variant>
#include <vector>

#include "rehearsal/groups.hpp"
#include "rehearsal/write_piece.hpp"

namespace repwright::rehearsal {

namespace {

using domain::Block;
using domain::BlockKind;
using domain::Item;

/// One member's part in a team's work.
class Member {
 public:
  Member(ScriptDraft& draft, const Seat& seat, Team& team)
      : draft_(draft), seat_(seat), team_(team), block_(draft.context().block) {}

  void write_turns();
  void write_swaps();
  void write_shared();

 private:
  bool first() const { return seat_.member == 0; }
  bool endless() const { return block_.duration.has_value(); }
  void take_baton(const Item& item);
  void turn_by_piece(std::size_t position);
  void turn_by_round(int round);
  void share_item(const Item& item, int round);
  void share_pool(const Item& item, int round);
  void share_round(const std::vector<Item>& items, int round);
  void share_rounds(const std::vector<Item>& items, std::optional<int> rounds);
  int pool_of(const Item& item, int round);
  double pool_units(const Item& item, int round) const;

  ScriptDraft& draft_;
  Seat seat_;
  Team& team_;
  const Block& block_;
  std::map<std::pair<int, int>, int> pools_;  // by step and listed round
  int next_pool_ = 0;
};

void Member::take_baton(const Item& item) {
  const int gate = draft_.script().tasks[static_cast<std::size_t>(draft_.task(item))].gate;
  draft_.add({.kind = OpKind::TakeBaton, .task = gate});
}

/// The team goes through the list; the next piece is the next person's.
void Member::turn_by_piece(std::size_t position) {
  const std::size_t count = block_.items.size();
  const Item& item = block_.items[position % count];
  take_baton(item);
  draft_.work(item, {.round = static_cast<int>(position / count)});
  if (position % count + 1 == count) draft_.mark(OpKind::RoundDone);
  draft_.mark(OpKind::PassBaton);
}

void Member::turn_by_round(int round) {
  take_baton(block_.items.front());
  for (const Item& item : block_.items) draft_.work(item, {.round = round});
  draft_.mark(OpKind::RoundDone);
  draft_.mark(OpKind::PassBaton);
}

void Member::write_turns() {
  if (block_.items.empty()) return;
  const auto member = static_cast<std::size_t>(seat_.member);
  const auto size = static_cast<std::size_t>(seat_.team_size);
  const bool by_piece = block_.work_mode == domain::WorkMode::AlternateByPiece;
  const std::size_t pieces = by_piece ? block_.items.size() : 1;
  const int rounds = block_.rounds.value_or(listed_rounds(block_.items));
  const std::size_t turns = endless() ? std::lcm(pieces, size) : pieces * static_cast<std::size_t>(rounds);
  const int start = draft_.here();
  for (std::size_t turn = member; turn < turns; turn += size)
    if (by_piece)
      turn_by_piece(turn);
    else
      turn_by_round(static_cast<int>(turn));
  if (endless()) draft_.add({.kind = OpKind::Jump, .target = start});
}

/// What each of the team does at once: a child each, or an item each.
std::vector<std::vector<Item>> parts_of(const Block& block) {
  std::vector<std::vector<Item>> parts;
  parts.reserve(block.children.size() + block.items.size());
  for (const Block& child : block.children) parts.push_back(child.items);
  for (const Item& item : block.items) parts.push_back({item});
  return parts;
}

/// Everybody at another part; who is done waits for the others, then all swap.
void Member::write_swaps() {
  const std::vector<std::vector<Item>> parts = parts_of(block_);
  if (parts.empty()) return;
  const auto member = static_cast<std::size_t>(seat_.member);
  const int rounds = endless() ? 1 : block_.rounds.value_or(1);
  const int start = draft_.here();
  for (int round = 0; round < rounds; ++round) {
    for (std::size_t turn = 0; turn < parts.size(); ++turn) {
      for (const Item& item : parts[(member + turn) % parts.size()]) draft_.work(item, {.round = round});
      draft_.add({.kind = OpKind::Meet, .pool = -1});
    }
    if (first()) draft_.mark(OpKind::RoundDone);
  }
  if (endless() && takes_time(draft_, start)) draft_.add({.kind = OpKind::Jump, .target = start});
}

double Member::pool_units(const Item& item, int round) const {
  const double factor = team_factor(block_, seat_.team_size);
  if (const auto* count = std::get_if<double>(&item.amount))
    return std::round(*count * factor) * (item.each_side ? 2 : 1);
  const domain::FittedItem& line = draft_.fitted(item);
  const double units = draft_.units(item, {.round = round});
  return std::isfinite(units) ? std::round(units / line.score_factor * factor) : units;
}

int Member::pool_of(const Item& item, int round) {
  const bool listed = std::holds_alternative<domain::PerSet>(item.amount);
  const auto [at, fresh] = pools_.try_emplace({item.step.index, listed ? round : 0}, next_pool_);
  if (!fresh) return at->second;
  ++next_pool_;
  if (static_cast<int>(team_.pools.size()) < next_pool_) {
    team_.pools.push_back(pool_units(item, round));
    team_.one_works.push_back(item.mode == domain::PartnerMode::OneWorks);
  }
  return at->second;
}

void Member::share_pool(const Item& item, int round) {
  const int pool = pool_of(item, round);
  if (draft_.units(item, {.round = round}) <= 0) return;
  draft_.add({.kind = OpKind::Pool, .task = draft_.task(item), .pool = pool});
}

void Member::share_item(const Item& item, int round) {
  switch (item.share.value_or(domain::Share::Total)) {
    case domain::Share::Sync:
      draft_.add({.kind = OpKind::Meet, .pool = -1});
      draft_.work(item, {.round = round});
      draft_.add({.kind = OpKind::Meet, .pool = -1});
      if (!first()) draft_.script().tasks[static_cast<std::size_t>(draft_.task(item))].counted = false;
      return;
    case domain::Share::Each:
      return draft_.work(item, {.round = round});
    case domain::Share::Total:
      return share_pool(item, round);
  }
}

void Member::share_round(const std::vector<Item>& items, int round) {
  for (const Item& item : items) share_item(item, round);
  draft_.add({.kind = OpKind::Meet, .pool = -1});
  if (first()) draft_.mark(OpKind::RoundDone);
}

void Member::share_rounds(const std::vector<Item>& items, std::optional<int> rounds) {
  if (items.empty()) return;
  const int start = draft_.here();
  const int count = rounds.value_or(listed_rounds(items));
  for (int round = 0; round < count; ++round) share_round(items, round);
  if (!rounds && endless() && takes_time(draft_, start)) draft_.add({.kind = OpKind::Jump, .target = start});
}

void Member::write_shared() {
  if (block_.children.empty()) return share_rounds(block_.items, block_.rounds);
  for (const Block& child : block_.children) {
    if (child.kind == BlockKind::Rounds) {
      share_rounds(child.items, child.rounds);
    } else if (child.kind == BlockKind::Rest) {
      draft_.rest(child.duration.value_or(base::Duration{}).si());
    } else {
      for (const Item& item : child.items) share_item(item, 0);
    }
  }
  draft_.add({.kind = OpKind::Meet, .pool = -1});
}

}  // namespace

void write_partner(ScriptDraft& draft, const Seat& seat, Team& team) {
  const int stop = draft.deadline(piece_end(draft.context().piece));
  Member member(draft, seat, team);
  const auto mode = draft.context().block.work_mode;
  if (mode == domain::WorkMode::SwapParts)
    member.write_swaps();
  else if (mode)
    member.write_turns();
  else
    member.write_shared();
  if (stop >= 0) draft.land(stop);
}

void write_relay(ScriptDraft& draft) {
  const Block& block = draft.context().block;
  const int stop = draft.deadline(piece_end(draft.context().piece));
  for (int turn = 0; turn < block.turns_each.value_or(1); ++turn) {
    draft.mark(OpKind::TakeBaton);
    for (const Item& item : block.items) draft.work(item, {.round = turn});
    draft.mark(OpKind::RoundDone);
    draft.mark(OpKind::PassBaton);
  }
  if (stop >= 0) draft.land(stop);
}

}  // namespace repwright::rehearsal
