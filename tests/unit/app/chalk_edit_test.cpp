#include "app/chalk_edit.hpp"

#include <gtest/gtest.h>

#include <string>

#include "support/shipped.hpp"
#include "timetable/timetable.hpp"

namespace repwright::app {
namespace {

using domain::Edit;
using domain::RepairKind;

/// A board and what becomes of its text.
class Chalk {
 public:
  explicit Chalk(std::string text) : text_(std::move(text)), reading_(reader_.read(text_)) {}

  /// An edit of the first block, done by `change`.
  template <class Change>
  std::optional<Chalked> after(RepairKind kind, std::vector<domain::StepId> steps, const Change& change) {
    Edit edit{.kind = kind,
              .block = reading_.board.blocks.front().id,
              .steps = std::move(steps),
              .words = {},
              .change = 1,
              .board = reading_.board,
              .text = {}};
    change(edit.board.blocks.front());
    return chalk_edit(edit, {text_, reading_, reader_, catalogue_, house_});
  }

 private:
  domain::Catalogue catalogue_ = test::shipped_catalogue();
  domain::House house_;
  board::Reader reader_{catalogue_, house_};
  std::string text_;
  board::Reading reading_;
};

const std::string rounds =
    "5 rounds for time\r\n"
    "  run 400 m\r\n"
    "  15 push ups\r\n"
    "  10 Pull-ups";

TEST(ChalkEdit, AddsALineBelowThePieceIndentedAndEndedLikeTheOthers) {
  const auto chalked = Chalk(rounds).after(RepairKind::OddStart, {{1}}, [](domain::Block& block) {
    block.odd_start = domain::MovementId{"push-up"};
  });
  ASSERT_TRUE(chalked);
  EXPECT_EQ(chalked->text, rounds + "\n  odd start with push-ups");
  EXPECT_EQ(chalked->line, 5);
}

TEST(ChalkEdit, ChangesTheOneNumberAndLeavesTheRestAsItWas) {
  const auto fewer =
      Chalk(rounds).after(RepairKind::FewerRounds, {}, [](domain::Block& block) { block.rounds = 4; });
  ASSERT_TRUE(fewer);
  EXPECT_EQ(fewer->text, "4" + rounds.substr(1));
  EXPECT_EQ(fewer->line, 1);
  const auto shorter = Chalk(rounds).after(RepairKind::ShorterRun, {{0}},
                                           [](domain::Block& block) { block.items[0].amount = 300.0; });
  ASSERT_TRUE(shorter);
  EXPECT_EQ(shorter->text, "5 rounds for time\r\n  run 300 m\r\n  15 push ups\r\n  10 Pull-ups");
}

TEST(ChalkEdit, SwapsTwoLinesAlsoWhenTheLastHasNoEnd) {
  const auto swapped = Chalk(rounds).after(RepairKind::Swap, {{1}, {2}}, [](domain::Block& block) {
    std::swap(block.items[1], block.items[2]);
    std::swap(block.items[1].step, block.items[2].step);
  });
  ASSERT_TRUE(swapped);
  EXPECT_EQ(swapped->text, "5 rounds for time\r\n  run 400 m\r\n  10 Pull-ups\n  15 push ups");
  EXPECT_EQ(swapped->line, 3);
}

TEST(ChalkEdit, WritesTheWholeBoardCleanWhereItsOwnLinesWillNotDo) {
  const std::string one_line = "5 rounds for time: run 400 m, 15 push-ups, 10 pull-ups\n";
  const auto swapped = Chalk(one_line).after(RepairKind::Swap, {{1}, {2}}, [](domain::Block& block) {
    std::swap(block.items[1], block.items[2]);
    std::swap(block.items[1].step, block.items[2].step);
  });
  ASSERT_TRUE(swapped);
  EXPECT_NE(swapped->text.find("10 pull-up"), std::string::npos) << swapped->text;
  EXPECT_LT(swapped->text.find("pull-up"), swapped->text.find("push-up")) << swapped->text;
}

}  // namespace
}  // namespace repwright::app
