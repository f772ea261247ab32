#pragma once

#include "domain/board.hpp"

/// Parts of a board by their numbers.
namespace repwright::domain {

/// The block of that id, searched through children too; null if there is none.
const Block* find_block(const Board& board, BlockId id);
Block* find_block(Board& board, BlockId id);

/// The line of work of that number, in blocks, their slots and children; null if there is none. Lines of
/// interrupts, penalties and what follows a miss are not looked through.
const Item* find_item(const Board& board, StepId step);
Item* find_item(Board& board, StepId step);

}  // namespace repwright::domain
