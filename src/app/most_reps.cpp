#include "app/most_reps.hpp"

#include <algorithm>
#include <variant>

namespace repwright::app {
namespace {

using domain::FittedItem;
using domain::Item;

/// What one line adds to the score each time; empty: as much as the person can.
std::optional<double> reps_of(const Item& written, const std::vector<FittedItem>& lines) {
  const auto line = std::ranges::find(lines, written.step, &FittedItem::step);
  if (line == lines.end()) return 0.0;
  const double* count = std::get_if<double>(&line->amount);
  if (count == nullptr) return std::nullopt;
  if (line->unit != domain::Unit::Reps) return 0.0;
  const double sides = line->each_side ? 2 : 1;
  return *count * sides / line->score_factor;
}

}  // namespace

std::optional<double> most_reps(const domain::Block& block, const timetable::Piece& piece,
                                const std::vector<FittedItem>& lines) {
  if (block.kind != domain::BlockKind::Every || block.slots.empty() || !block.after_fail.empty()) return {};
  double most = 0;
  for (const timetable::Phase& phase : piece.phases) {
    if (phase.kind != timetable::PhaseKind::Work) continue;
    for (const Item& written : block.slots[static_cast<std::size_t>(phase.slot) % block.slots.size()]) {
      const auto reps = reps_of(written, lines);
      if (!reps) return {};
      most += *reps;
    }
  }
  return most > 0 ? std::optional(most) : std::nullopt;
}

}  // namespace repwright::app
