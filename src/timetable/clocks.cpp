#include "timetable/clocks.hpp"

#include <algorithm>

#include "timetable/length.hpp"

namespace repwright::timetable {

namespace {

using domain::Block;
using domain::BlockKind;

/// Lays stretches end to end.
class EdgeLine {
 public:
  void add(PhaseKind kind, base::Duration length, int round, int slot) {
    const base::SimTime end = at_ + base::sim_time(length);
    if (end == at_) return;
    phases_.push_back({kind, at_, end, round, slot});
    at_ = end;
  }
  void drop_last_rest() {
    if (!phases_.empty() && phases_.back().kind == PhaseKind::Rest) phases_.pop_back();
  }
  std::vector<Phase> take() { return std::move(phases_); }

 private:
  base::SimTime at_;
  std::vector<Phase> phases_;
};

std::vector<Phase> slots_of(const Block& block) {
  EdgeLine line;
  const int count = std::max<int>(1, static_cast<int>(block.slots.size()));
  for (int i = 0; i < block.intervals.value_or(0); ++i) {
    const int slot = i % count;
    const bool rests = !block.slots.empty() && block.slots[static_cast<std::size_t>(slot)].empty();
    line.add(rests ? PhaseKind::Rest : PhaseKind::Work, block.every.value_or(base::minute), i / count, slot);
  }
  return line.take();
}

/// After each timed interval.
base::Duration interval_rest(const Block& block, base::Duration work) {
  const domain::RestRule rule = block.rest_rule.value_or(domain::RestRule{});
  if (block.rest_rule && rule.kind == domain::RestKind::Fixed) return rule.length;
  if (block.rest_rule && rule.kind == domain::RestKind::Ratio && rule.work > 0)
    return work * (rule.rest / rule.work);
  return block.rest.value_or(base::Duration{});
}

std::vector<Phase> intervals_of(const Block& block, const LayoutRules& rules) {
  const base::Duration work = block.work.value_or(base::minute);
  const base::Duration rest = interval_rest(block, work);
  EdgeLine line;
  for (int round = 0; round < block.rounds.value_or(1); ++round) {
    line.add(PhaseKind::Work, work, round, 0);
    line.add(PhaseKind::Rest, rest, round, 0);
  }
  if (!rules.last_rest_counts || (block.rest_rule && block.rest_rule->between_only)) line.drop_last_rest();
  return line.take();
}

std::vector<Phase> stations_of(const Block& block, const LayoutRules& rules) {
  EdgeLine line;
  const int laps = block.laps.value_or(1);
  const int stations = static_cast<int>(block.slots.size());
  for (int lap = 0; lap < laps; ++lap) {
    for (int station = 0; station < stations; ++station) {
      const bool rests = block.slots[static_cast<std::size_t>(station)].empty();
      line.add(rests ? PhaseKind::Rest : PhaseKind::Work, block.work.value_or(base::minute), lap, station);
      line.add(PhaseKind::Rest, block.rest.value_or(base::Duration{}), lap, station);
    }
    if (lap + 1 < laps) line.add(PhaseKind::Rest, block.lap_rest.value_or(base::Duration{}), lap, stations);
  }
  if (!rules.last_rest_counts) line.drop_last_rest();
  return line.take();
}

ClockKind clock_of(const Block& block) {
  switch (block.kind) {
    case BlockKind::Every:
    case BlockKind::Circuit:
      return ClockKind::Edges;
    case BlockKind::Intervals:
      return block.work ? ClockKind::Edges : ClockKind::Own;
    case BlockKind::Amrap:
    case BlockKind::ForDistance:
    case BlockKind::MaxEffort:
      return ClockKind::Down;
    case BlockKind::Ladder:
    case BlockKind::Partner:
    case BlockKind::Build:
      return block.duration ? ClockKind::Down : ClockKind::Up;
    case BlockKind::Sets:
    case BlockKind::Superset:
    case BlockKind::Accumulate:
      return ClockKind::Own;
    default:
      return ClockKind::Up;
  }
}

std::optional<base::Duration> shorter(std::optional<base::Duration> a, std::optional<base::Duration> b) {
  if (a && b) return std::min(*a, *b);
  return a ? a : b;
}

}  // namespace

bool has_clock(const Block& block) {
  switch (block.kind) {
    case BlockKind::Window:
    case BlockKind::Part:
    case BlockKind::Rest:
    case BlockKind::Note:
    case BlockKind::Optional:
      return false;
    case BlockKind::Once:  // a warm-up: with minutes a box, without them people take as long as they need
    case BlockKind::Rounds:
    case BlockKind::Partition:
      return !block.duration;
    default:
      return true;
  }
}

std::vector<Phase> phases_of(const Block& block, const LayoutRules& rules) {
  if (clock_of(block) != ClockKind::Edges) return {};
  if (block.kind == BlockKind::Every) return slots_of(block);
  return block.kind == BlockKind::Circuit ? stations_of(block, rules) : intervals_of(block, rules);
}

Piece piece_of(const Block& block, const LayoutRules& rules) {
  Piece piece;
  piece.block = block.id;
  piece.name = block.title;
  piece.clock = clock_of(block);
  piece.phases = phases_of(block, rules);
  piece.heats = std::max(1, block.heats.value_or(1));
  piece.stagger = block.start;
  piece.cap = block.cap;
  if (!piece.phases.empty())
    piece.length = piece.phases.back().end.duration();
  else if (piece.clock == ClockKind::Up)
    piece.cap = shorter(block.cap, block.duration);
  else
    piece.length = block.duration;
  return piece;
}

std::optional<base::Duration> planned_length(const Block& block, const LayoutRules& rules) {
  const int heats = std::max(1, block.heats.value_or(1));
  std::optional<base::Duration> work = fixed_length(block);
  const std::vector<Phase> phases = phases_of(block, rules);
  if (!rules.last_rest_counts && !block.duration && !phases.empty())
    work = phases.back().end.duration() * heats;
  return work ? std::optional(*work + heat_change * (heats - 1)) : work;
}

}  // namespace repwright::timetable
