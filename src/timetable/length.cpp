#include "timetable/length.hpp"

#include <vector>

namespace repwright::timetable {
namespace {

using base::Duration;
using domain::Block;
using domain::BlockKind;
using Length = std::optional<Duration>;

Length sum_of(const std::vector<Block>& blocks) {
  Duration sum;
  for (const Block& block : blocks) {
    const Length length = fixed_length(block);
    if (!length) return std::nullopt;
    sum += *length;
  }
  return sum;
}

Length product(const std::optional<Duration>& time, const std::optional<int>& count) {
  if (!time || !count) return std::nullopt;
  return *time * *count;
}

Length intervals_length(const Block& block) {
  if (!block.work || !block.rounds) return std::nullopt;
  const int rounds = *block.rounds;
  const Duration work = *block.work * rounds;
  if (!block.rest_rule) return work + block.rest.value_or(Duration{}) * rounds;
  const domain::RestRule& rule = *block.rest_rule;
  if (rule.kind == domain::RestKind::Free) return std::nullopt;
  const Duration rest =
      rule.kind == domain::RestKind::Fixed ? rule.length : *block.work * (rule.rest / rule.work);
  return work + rest * (rounds - (rule.between_only ? 1 : 0));
}

Length circuit_length(const Block& block) {
  if (!block.work) return std::nullopt;
  const int laps = block.laps.value_or(1);
  const auto stations = static_cast<double>(block.slots.size());
  const Duration lap = (*block.work + block.rest.value_or(Duration{})) * stations;
  return lap * laps + block.lap_rest.value_or(Duration{}) * (laps - 1);
}

Length once_through(const Block& block) {
  if (block.kind == BlockKind::Window) {
    if (!block.from || !block.to) return std::nullopt;
    return *block.to - *block.from;
  }
  if (block.kind == BlockKind::Optional) return Duration{};
  if (block.duration) return block.duration;
  switch (block.kind) {
    case BlockKind::Every:
      return product(block.every, block.intervals);
    case BlockKind::Intervals:
      return intervals_length(block);
    case BlockKind::Circuit:
      return circuit_length(block);
    case BlockKind::Note:
      return Duration{};
    case BlockKind::Part:
      return sum_of(block.children);
    default:
      return std::nullopt;
  }
}

}  // namespace

std::optional<Duration> fixed_length(const Block& block) {
  const Length length = once_through(block);
  if (!length) return std::nullopt;
  return *length * block.heats.value_or(1);
}

std::optional<Duration> fixed_length(const domain::Board& board) {
  const Length sum = sum_of(board.blocks);
  return sum && *sum > Duration{} ? sum : std::nullopt;
}

}  // namespace repwright::timetable
