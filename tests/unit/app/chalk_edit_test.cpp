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
  EXPECT_EQ(chalked->lines, std::vector<int>{5});
  EXPECT_FALSE(chalked->rewritten);
}

TEST(ChalkEdit, ChangesTheOneNumberAndLeavesTheRestAsItWas) {
  const auto fewer =
      Chalk(rounds).after(RepairKind::FewerRounds, {}, [](domain::Block& block) { block.rounds = 4; });
  ASSERT_TRUE(fewer);
  EXPECT_EQ(fewer->text, "4" + rounds.substr(1));
  EXPECT_EQ(fewer->lines, std::vector<int>{1});
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
  EXPECT_EQ(swapped->lines, (std::vector<int>{3, 4}));
}

TEST(ChalkEdit, SwapsTwoWorksOfOneLine) {
  const auto swapped = Chalk("5 rounds for time: run 400 m, 15 push-ups, 10 pull-ups\n")
                           .after(RepairKind::Swap, {{1}, {2}}, [](domain::Block& block) {
                             std::swap(block.items[1], block.items[2]);
                             std::swap(block.items[1].step, block.items[2].step);
                           });
  ASSERT_TRUE(swapped);
  EXPECT_EQ(swapped->text, "5 rounds for time: run 400 m, 10 pull-ups, 15 push-ups\n");
}

TEST(ChalkEdit, WritesASecondStationBehindItsWorkWhereSeveralShareALine) {
  const auto two = Chalk("E3MOM x 7\n 200 m run + 3 pulls + 5 push-ups\n")
                       .after(RepairKind::SecondStation, {{0}}, [](domain::Block& block) {
                         block.slots[0][0].second_station = domain::MovementId{"rower"};
                       });
  ASSERT_TRUE(two);
  EXPECT_EQ(two->text, "E3MOM x 7\n 200 m run (2nd station: rows) + 3 pulls + 5 push-ups\n");
}

TEST(ChalkEdit, ChangesSeveralNumbersEachInItsOwnWords) {
  const auto less = Chalk("for time, cap 20\nrun 2,0 km\n12 pull ups, 12 push-ups\n")
                        .after(RepairKind::LessOfEach, {{0}, {1}, {2}}, [](domain::Block& block) {
                          block.items[0].amount = 1500.0;
                          block.items[1].amount = 9.0;
                          block.items[2].amount = 9.0;
                        });
  ASSERT_TRUE(less);
  EXPECT_EQ(less->text, "for time, cap 20\nrun 1500 m\n9 pull ups, 9 push-ups\n");
  EXPECT_EQ(less->lines, (std::vector<int>{2, 3}));
}

TEST(ChalkEdit, WritesALongerTurnAndFewerOfThem) {
  const auto longer = Chalk("Cond 21': E3MOM x 7\n200 m run + 3 pulls\n")
                          .after(RepairKind::LongerInterval, {}, [](domain::Block& block) {
                            block.every = 210 * base::second;
                            block.intervals = 6;
                          });
  ASSERT_TRUE(longer);
  EXPECT_EQ(longer->text, "Cond 21': Every 3:30 x 6\n200 m run + 3 pulls\n");
}

TEST(ChalkEdit, RubsOutWhatIsCut) {
  const std::string text =
      "Warm-up 10'\n\nStrength 12'\n4 x 6 goblet squats\n\nPIECE A\nAMRAP 11\n10 push-ups\n";
  domain::Catalogue catalogue = test::shipped_catalogue();
  const board::Reader reader(catalogue, {});
  const board::Reading reading = reader.read(text);
  Edit edit{
      .kind = RepairKind::CutList, .block = {}, .steps = {}, .words = {}, .board = reading.board, .text = {}};
  ASSERT_EQ(edit.board.blocks.size(), 3u);
  edit.board.blocks.erase(edit.board.blocks.begin() + 1);
  const auto cut = chalk_edit(edit, {text, reading, reader, catalogue, {}});
  ASSERT_TRUE(cut);
  EXPECT_EQ(cut->text, "Warm-up 10'\n\nPIECE A\nAMRAP 11\n10 push-ups\n");
  EXPECT_TRUE(cut->lines.empty());
}

TEST(ChalkEdit, WritesTheWholeBoardCleanWhereItsOwnLinesWillNotDo) {
  const auto fewer = Chalk("five rounds for time\nrun 400 m\n15 push-ups\n")
                         .after(RepairKind::FewerRounds, {}, [](domain::Block& block) { block.rounds = 4; });
  ASSERT_TRUE(fewer);
  EXPECT_TRUE(fewer->rewritten);
  EXPECT_NE(fewer->text.find("4 rounds"), std::string::npos) << fewer->text;
}

}  // namespace
}  // namespace repwright::app
