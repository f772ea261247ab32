#pragma once

#include <vector>

#include "domain/board.hpp"

namespace repwright::rehearsal {

/// A line of a board with the block that holds it and the block around it that names levels (or null).
struct ItemAt {
  const domain::Item* item = nullptr;
  const domain::Block* block = nullptr;
  const domain::Block* levels = nullptr;
};

/// Every line of the board, also of interrupts, penalties and what follows a miss; `[i]` is the line of step
/// i, with a null item where no line has that number. The board must outlive the answer.
std::vector<ItemAt> items_by_step(const domain::Board& board);

}  // namespace repwright::rehearsal
