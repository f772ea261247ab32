#include "app/board_numbers.hpp"

#include <variant>

namespace repwright::app {
namespace {

using domain::Block;
using domain::Item;

class Differences {
 public:
  void blocks(const std::vector<Block>& before, const std::vector<Block>& after) {
    if (before.size() != after.size()) {
      same_shape_ = false;
      return;
    }
    for (std::size_t b = 0; b < before.size(); ++b) block(before[b], after[b]);
  }
  std::vector<ChangedNumber> take() {
    if (!same_shape_) changes_.clear();
    return std::move(changes_);
  }

 private:
  void block(const Block& before, const Block& after) {
    for (const auto count : {&Block::rounds, &Block::sets, &Block::laps, &Block::intervals}) {
      const std::optional<int>&from = before.*count, &to = after.*count;
      if (from && to) number(before, NumberKind::Count, *from, *to);
    }
    for (const auto time : {&Block::duration, &Block::cap, &Block::every}) {
      const std::optional<base::Duration>&from = before.*time, &to = after.*time;
      if (from && to) number(before, NumberKind::Time, from->si(), to->si());
    }
    items(before, before.items, after.items);
    for (std::size_t s = 0; s < before.slots.size() && s < after.slots.size(); ++s)
      items(before, before.slots[s], after.slots[s]);
    blocks(before.children, after.children);
  }

  void number(const Block& block, NumberKind kind, double from, double to) {
    if (from != to) changes_.push_back({.block = block.id, .step = {}, .kind = kind, .from = from, .to = to});
  }

  void items(const Block& block, const std::vector<Item>& before, const std::vector<Item>& after) {
    for (std::size_t i = 0; i < before.size() && i < after.size(); ++i) {
      const auto* from = std::get_if<double>(&before[i].amount);
      const auto* to = std::get_if<double>(&after[i].amount);
      if (from == nullptr || to == nullptr || *from == *to) continue;
      const NumberKind kind = before[i].unit == domain::Unit::Metres ? NumberKind::Metres : NumberKind::Count;
      changes_.push_back({.block = block.id, .step = before[i].step, .kind = kind, .from = *from, .to = *to});
    }
  }

  bool same_shape_ = true;
  std::vector<ChangedNumber> changes_;
};

}  // namespace

std::vector<ChangedNumber> changed_numbers(const domain::Board& before, const domain::Board& after) {
  Differences differences;
  differences.blocks(before.blocks, after.blocks);
  return differences.take();
}

}  // namespace repwright::app
