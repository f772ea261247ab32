#include <algorithm>
#include <array>
#include <cmath>

#include "rehearsal/write_piece.hpp"

namespace repwright::rehearsal {

namespace {

using domain::Block;
using domain::Item;

/// Between sets where the board names no rest (common practice, no source).
constexpr double usual_rest_s = 120;
/// Shares of the heavy load on the way up, and the rest before each (common practice, no source).
constexpr std::array<double, 7> climb_shares{0.5, 0.6, 0.7, 0.8, 0.88, 0.94, 1};
constexpr double build_rest_s = 120;
constexpr double build_turn_s = 150;  // rest and set: how many attempts a window holds

int sets_of(const Block& block) {
  return std::max(1, block.sets.value_or(listed_rounds(block.items)));
}

}  // namespace

void write_sets(ScriptDraft& draft) {
  const Block& block = draft.context().block;
  const int stop = draft.deadline(piece_end(draft.context().piece));
  const int sets = sets_of(block);
  const double rest = block.rest ? block.rest->si() : usual_rest_s;
  for (int set = 0; set < sets; ++set) {
    for (const Item& item : block.items) draft.work(item, {.round = set});
    draft.mark(OpKind::RoundDone);
    if (set + 1 < sets) draft.rest(rest);
  }
  draft.script().step_rounds = sets;
  if (stop >= 0) draft.land(stop);
}

void write_build(ScriptDraft& draft) {
  const auto end = piece_end(draft.context().piece);
  const int stop = draft.deadline(end);
  const int room = end ? static_cast<int>(*end / build_turn_s) : static_cast<int>(climb_shares.size());
  const int attempts = std::clamp(room, 1, static_cast<int>(climb_shares.size()));
  const auto first = climb_shares.size() - static_cast<std::size_t>(attempts);
  for (std::size_t i = first; i < climb_shares.size(); ++i) {
    for (const Item& item : draft.context().block.items) draft.work(item, {.load_share = climb_shares[i]});
    draft.mark(OpKind::RoundDone);
    if (i + 1 < climb_shares.size()) draft.rest(build_rest_s);
  }
  draft.script().step_rounds = attempts;
  if (stop >= 0) draft.land(stop);
}

void write_accumulate(ScriptDraft& draft) {
  const Block& block = draft.context().block;
  const int stop = draft.deadline(piece_end(draft.context().piece));
  for (const Item& item : block.items) draft.work(item);
  if (stop >= 0) draft.land(stop);
}

}  // namespace repwright::rehearsal
