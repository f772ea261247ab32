#include "app/lone_piece.hpp"

#include <algorithm>

#include "rehearsal/amounts.hpp"

namespace repwright::app {
namespace {

using domain::Block;
using domain::BlockKind;

/// The lines as one of a team does them alone.
void alone(std::vector<domain::Item>& items, int size) {
  for (domain::Item& item : items) {
    if (item.share.value_or(domain::Share::Total) == domain::Share::Total && size > 1)
      item.amount = rehearsal::times(item.amount, 1.0 / size, 1);
    item.share.reset();
    item.mode.reset();
    item.gate.reset();
  }
}

}  // namespace

Block lone_piece(const Block& piece) {
  Block own = piece;
  const bool team = piece.kind == BlockKind::Partner || piece.kind == BlockKind::Relay;
  const bool shared = piece.kind == BlockKind::Partner && !piece.work_mode;
  const int size = piece.team_sizes.empty() ? 2 : std::max(1, std::ranges::min(piece.team_sizes));
  if (team) {
    own.kind = piece.duration ? BlockKind::Amrap : BlockKind::ForTime;
    own.score = piece.duration ? domain::Score::Reps : domain::Score::Time;
  }
  if (piece.kind == BlockKind::Relay) own.rounds = piece.turns_each;
  own.cap.reset();
  own.heats.reset();
  own.lanes.reset();
  own.start.reset();
  own.team_sizes.clear();
  own.odd_team.reset();
  own.work_mode.reset();
  own.turns_each.reset();
  alone(own.items, shared ? size : 1);
  for (Block& child : own.children) alone(child.items, shared ? size : 1);
  return own;
}

}  // namespace repwright::app
