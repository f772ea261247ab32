#include "domain/board_search.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace repwright::domain {
namespace {

const Block* block_in(const std::vector<Block>& blocks, BlockId id) {
  for (const Block& block : blocks) {
    if (block.id == id) return &block;
    if (const Block* inner = block_in(block.children, id)) return inner;
  }
  return nullptr;
}

const Item* item_in(const std::vector<Item>& items, StepId step) {
  const auto found = std::ranges::find(items, step, &Item::step);
  return found == items.end() ? nullptr : &*found;
}

const Item* item_in(const std::vector<Block>& blocks, StepId step) {
  for (const Block& block : blocks) {
    if (const Item* item = item_in(block.items, step)) return item;
    for (const std::vector<Item>& slot : block.slots)
      if (const Item* item = item_in(slot, step)) return item;
    if (const Item* inner = item_in(block.children, step)) return inner;
  }
  return nullptr;
}

}  // namespace

const Block* find_block(const Board& board, BlockId id) {
  return block_in(board.blocks, id);
}
const Item* find_item(const Board& board, StepId step) {
  return item_in(board.blocks, step);
}

// What is found in a board that may be changed may be changed.
Block* find_block(Board& board, BlockId id) {
  return const_cast<Block*>(find_block(std::as_const(board), id));
}
Item* find_item(Board& board, StepId step) {
  return const_cast<Item*>(find_item(std::as_const(board), step));
}

}  // namespace repwright::domain
