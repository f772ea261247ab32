#include "rehearsal/board_items.hpp"

#include <cstddef>

namespace repwright::rehearsal {

namespace {

class Collector {
 public:
  void add_blocks(const std::vector<domain::Block>& blocks, const domain::Block* levels) {
    for (const domain::Block& block : blocks) {
      const domain::Block* near = block.levels.empty() ? levels : &block;
      add(block.items, block, near);
      for (const auto& slot : block.slots) add(slot, block, near);
      if (block.interrupt) add(block.interrupt->items, block, near);
      add(block.penalty, block, near);
      add(block.after_fail, block, near);
      add_blocks(block.children, near);
    }
  }
  std::vector<ItemAt> take() { return std::move(lines_); }

 private:
  void add(const std::vector<domain::Item>& items, const domain::Block& block, const domain::Block* levels) {
    for (const domain::Item& item : items) {
      if (item.step.index < 0) continue;
      const auto at = static_cast<std::size_t>(item.step.index);
      if (lines_.size() <= at) lines_.resize(at + 1);
      lines_[at] = {&item, &block, levels};
    }
  }
  std::vector<ItemAt> lines_;
};

}  // namespace

std::vector<ItemAt> items_by_step(const domain::Board& board) {
  Collector collector;
  collector.add_blocks(board.blocks, nullptr);
  return collector.take();
}

}  // namespace repwright::rehearsal
