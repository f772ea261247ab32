#include "domain/board_search.hpp"

#include <gtest/gtest.h>

namespace repwright::domain {
namespace {

/// A block of two lines, with a child of one and a clock of two slots in it.
Board nested() {
  Board board;
  Block& outer = board.blocks.emplace_back();
  outer.id = {0};
  outer.items.resize(2);
  outer.items[0].step = {0};
  outer.items[1].step = {1};
  Block& child = outer.children.emplace_back();
  child.id = {1};
  child.slots.resize(2);
  child.slots[1].emplace_back().step = {2};
  Block& inner = child.children.emplace_back();
  inner.id = {2};
  inner.items.emplace_back().step = {3};
  return board;
}

TEST(BoardSearch, FindsABlockAtAnyDepth) {
  const Board board = nested();
  ASSERT_NE(find_block(board, {2}), nullptr);
  EXPECT_EQ(find_block(board, {2})->items.front().step, StepId{3});
  EXPECT_EQ(find_block(board, {7}), nullptr);
}

TEST(BoardSearch, FindsALineInItemsSlotsAndChildren) {
  const Board board = nested();
  for (int step = 0; step < 4; ++step) {
    ASSERT_NE(find_item(board, {step}), nullptr) << step;
    EXPECT_EQ(find_item(board, {step})->step, StepId{step});
  }
  EXPECT_EQ(find_item(board, {4}), nullptr);
}

TEST(BoardSearch, ChangesWhatItFindsInABoardOfOnesOwn) {
  Board board = nested();
  find_item(board, {2})->amount = 9.0;
  find_block(board, {1})->rounds = 3;
  EXPECT_EQ(board.blocks[0].children[0].slots[1][0].amount, Amount{9.0});
  EXPECT_EQ(board.blocks[0].children[0].rounds, 3);
}

}  // namespace
}  // namespace repwright::domain
