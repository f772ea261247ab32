#include "advice/edits.hpp"

#include <algorithm>
#include <iterator>

#include "advice/amount_edits.hpp"
#include "advice/consequences.hpp"
#include "advice/queue_edits.hpp"
#include "advice/troubles.hpp"

namespace repwright::advice {
namespace {

/// A run may be shortened against a queue and against the clock: once is enough.
void append(std::vector<domain::Edit>& edits, std::vector<domain::Edit> further) {
  for (domain::Edit& edit : further) {
    const bool known =
        std::ranges::any_of(edits, [&](const domain::Edit& one) { return one.board == edit.board; });
    if (!known) edits.push_back(std::move(edit));
  }
}

}  // namespace

std::vector<domain::Edit> edits_of(const EditRequest& request) {
  const Troubles troubles = troubles_of(request.before, request.board, request.timetable, request.catalogue);
  const auto blocks = piece_blocks(request.board, request.timetable);
  std::vector<domain::Edit> edits;
  for (std::size_t at = 0; at < blocks.size(); ++at) {
    const domain::Block* block = blocks[at];
    if (block == nullptr) continue;
    if (!troubles.crowded.empty())
      append(edits, queue_edits(request, troubles, request.timetable.pieces[at], *block));
    append(edits, amount_edits(request, at, troubles, *block));
  }
  return edits;
}

}  // namespace repwright::advice
