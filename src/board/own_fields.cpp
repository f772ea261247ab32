#include "board/own_fields.hpp"

#include <algorithm>
#include <initializer_list>

namespace repwright::board {
namespace {

using domain::Block;
using domain::BlockKind;

bool among(BlockKind kind, std::initializer_list<BlockKind> kinds) {
  return std::ranges::find(kinds, kind) != kinds.end();
}

/// Words and minutes alone.
bool only_words(BlockKind kind) {
  return among(kind, {BlockKind::Rest, BlockKind::Note, BlockKind::Window, BlockKind::Part});
}

Block words_of(const Block& from) {
  Block to;
  to.kind = from.kind;
  to.id = from.id;
  to.title = from.title;
  to.text = from.text;
  to.duration = from.duration;
  to.from = from.from;
  to.to = from.to;
  to.children = from.children;
  return to;
}

void keep_counts(Block& block) {
  const BlockKind kind = block.kind;
  using enum BlockKind;
  if (!among(kind, {ForTime, Intervals, Partner, Optional, Rounds})) block.rounds.reset();
  if (!among(kind, {Sets, Superset, Optional})) block.sets.reset();
  if (kind != Circuit) block.laps.reset();
  if (kind != Every) block.intervals.reset();
  if (kind != Relay) block.turns_each.reset();
  if (!among(kind, {Relay, Partner})) block.lanes.reset();
}

void keep_times(Block& block) {
  const BlockKind kind = block.kind;
  using enum BlockKind;
  if (!among(kind, {Intervals, Circuit})) block.work.reset();
  if (!among(kind, {Intervals, Circuit, Sets, Superset})) block.rest.reset();
  if (kind != Every) block.every.reset();
  if (kind != Circuit) block.lap_rest.reset();
  if (!among(kind, {Intervals, Partner})) block.rest_rule.reset();
  block.from.reset();
  block.to.reset();
}

void keep_rules(Block& block) {
  const BlockKind kind = block.kind;
  using enum BlockKind;
  if (kind != Intervals) block.carry_over = false;
  if (kind != Every) block.after_fail.clear();
  if (!among(kind, {Partner, Relay})) {
    block.team_sizes.clear();
    block.odd_team.reset();
  }
  if (kind != Partner) block.work_mode.reset();
}

}  // namespace

bool drop_foreign_fields(Block& block) {
  const Block before = block;
  if (only_words(block.kind)) {
    block = words_of(before);
  } else {
    keep_counts(block);
    keep_times(block);
    keep_rules(block);
  }
  return block != before;
}

}  // namespace repwright::board
