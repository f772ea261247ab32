#include "app/cut_list.hpp"

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "advice/cuts.hpp"
#include "domain/board_search.hpp"

namespace repwright::app {
namespace {

using domain::Block;

constexpr double size_of_a_cut = 1.5;  // as of a second station: one sentence to the class each
constexpr int most = 8;
constexpr int runs = 8;  // a class's end hardly differs between runs: a few tell it

/// Which numbers the blocks and steps of one board have in another of the same shape.
class Renaming {
 public:
  Renaming(const std::vector<Block>& from, const std::vector<Block>& to) { blocks(from, to); }

  void apply(std::vector<Block>& blocks) const {
    for (Block& block : blocks) {
      rename(block.id, blocks_);
      for (domain::Item& item : block.items) rename(item.step, steps_);
      for (std::vector<domain::Item>& slot : block.slots)
        for (domain::Item& item : slot) rename(item.step, steps_);
      apply(block.children);
    }
  }

 private:
  void blocks(const std::vector<Block>& from, const std::vector<Block>& to) {
    for (std::size_t b = 0; b < from.size() && b < to.size(); ++b) {
      blocks_[from[b].id.index] = to[b].id.index;
      items(from[b].items, to[b].items);
      for (std::size_t s = 0; s < from[b].slots.size() && s < to[b].slots.size(); ++s)
        items(from[b].slots[s], to[b].slots[s]);
      blocks(from[b].children, to[b].children);
    }
  }
  void items(const std::vector<domain::Item>& from, const std::vector<domain::Item>& to) {
    for (std::size_t i = 0; i < from.size() && i < to.size(); ++i)
      steps_[from[i].step.index] = to[i].step.index;
  }
  template <class Id>
  static void rename(Id& id, const std::map<int, int>& names) {
    if (const auto found = names.find(id.index); found != names.end()) id.index = found->second;
  }

  std::map<int, int> blocks_;
  std::map<int, int> steps_;
};

/// A second cut of the same thing goes on from the first: `2 sets instead of 4`. What is left out altogether
/// has no sets any more.
void add(std::vector<advice::CutWords>& all, const advice::CutWords& cut) {
  if (cut.then.empty()) std::erase_if(all, [&](const advice::CutWords& one) { return one.name == cut.name; });
  for (advice::CutWords& one : all)
    if (one.name == cut.name && one.what == cut.what && !cut.then.empty()) {
      one.then = cut.then;
      return;
    }
  all.push_back(cut);
}

std::string said(const std::vector<advice::CutWords>& all) {
  std::string words = "cut: ";
  for (const advice::CutWords& one : all) words += (&one == &all.front() ? "" : "; ") + one.said();
  return words;
}

}  // namespace

base::Result<std::optional<domain::Edit>> cut_list(const Chalkboard& on, double by_s,
                                                   const advice::Trial& trial,
                                                   const rehearsal::ForEach& for_each) {
  const auto order =
      advice::cuts_in_order(on.reading.board, trial, {.most = most, .runs = runs, .until_s = by_s}, for_each);
  if (!order) return tl::unexpected(order.error());
  if (order->empty()) return std::nullopt;
  domain::Edit all{.kind = domain::RepairKind::CutList,
                   .block = {},
                   .steps = {},
                   .words = {},
                   .change = size_of_a_cut * static_cast<double>(order->size()),
                   .board = on.reading.board,
                   .text = std::string(on.text)};
  domain::Board before = on.reading.board;
  std::vector<advice::CutWords> words;
  for (const advice::OrderedCut& cut : *order) {
    const board::Reading reading = on.reader.read(all.text);
    domain::Edit one{.kind = domain::RepairKind::CutList,
                     .block = {},
                     .steps = {},
                     .words = {},
                     .board = cut.board,
                     .text = {}};
    Renaming(before.blocks, reading.board.blocks).apply(one.board.blocks);
    auto chalked = chalk_edit(one, {all.text, reading, on.reader, on.catalogue, on.house});
    if (!chalked) return std::nullopt;
    add(words, cut.words);
    all.text = std::move(chalked->text);
    all.rewritten = all.rewritten || chalked->rewritten;
    before = cut.board;
  }
  all.words = said(words);
  all.board = on.reader.read(all.text).board;
  return all;
}

}  // namespace repwright::app
