#include "board/usual_score.hpp"

#include <algorithm>

namespace repwright::board {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Item;
using domain::Score;
using domain::Unit;

bool is_max(const Item& item) {
  return std::holds_alternative<domain::Max>(item.amount);
}
bool is_held(const Item& item) {
  return item.unit == Unit::Seconds && !is_max(item);
}
bool is_loaded(const Item& item) {
  return item.loads || item.load_share || item.load_step || item.effort;
}

Score sum_of(Unit unit) {
  if (unit == Unit::Kilocalories) return Score::KcalSum;
  return unit == Unit::Metres ? Score::DistanceSum : Score::RepsSum;
}

Score one_max(const Block& block) {
  const Unit unit = block.items.empty() ? Unit::Reps : block.items.front().unit;
  if (unit == Unit::Kilocalories) return Score::Kcal;
  return unit == Unit::Metres ? Score::Distance : Score::Reps;
}

Score every_score(const Block& block) {
  if (!block.after_fail.empty()) return Score::LastFullMinute;
  for (const auto& slot : block.slots)
    if (const auto max = std::ranges::find_if(slot, is_max); max != slot.end()) return sum_of(max->unit);
  return Score::None;
}

Score intervals_score(const Block& block) {
  if (!block.work) return Score::Times;
  if (!block.children.empty()) return Score::RoundsReps;
  if (std::ranges::all_of(block.items, is_held)) return Score::None;
  const auto max = std::ranges::find_if(block.items, is_max);
  return max == block.items.end() ? Score::RoundsReps : sum_of(max->unit);
}

bool names_points(const Item& item) {
  for (const std::string_view word : {" pt", " point"})
    if (item.free_text.find(word) != std::string::npos || item.note.find(word) != std::string::npos)
      return true;
  return false;
}

Score circuit_score(const Block& block) {
  const bool points = std::ranges::any_of(
      block.slots, [](const std::vector<Item>& slot) { return std::ranges::any_of(slot, names_points); });
  return points ? Score::Points : Score::None;
}

}  // namespace

Score usual_score(const Block& block) {
  switch (block.kind) {
    case BlockKind::ForTime:
    case BlockKind::Accumulate:
      return Score::Time;
    case BlockKind::Amrap:
      return Score::RoundsReps;
    case BlockKind::Every:
      return every_score(block);
    case BlockKind::Intervals:
      return intervals_score(block);
    case BlockKind::Sets:
    case BlockKind::Superset:
      return std::ranges::any_of(block.items, is_loaded) ? Score::Load : Score::None;
    case BlockKind::Circuit:
      return circuit_score(block);
    case BlockKind::Ladder:
      return Score::RungReps;
    case BlockKind::Partner:
      return block.duration ? Score::RoundsReps : Score::Time;
    case BlockKind::Relay:
      return Score::Place;
    case BlockKind::Build:
      return Score::Load;
    case BlockKind::ForDistance:
      return Score::Distance;
    case BlockKind::MaxEffort:
      return one_max(block);
    default:
      return Score::None;
  }
}

}  // namespace repwright::board
