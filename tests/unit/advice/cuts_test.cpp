#include "advice/cuts.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "board/read.hpp"
#include "support/shipped_catalogue.hpp"
#include "timetable/timetable.hpp"

namespace repwright::advice {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

domain::Board board_of(const std::string& chalk) {
  return board::read(chalk, test::shipped_catalogue(), {}).board;
}

std::vector<std::string> words_of(const std::string& chalk) {
  std::vector<std::string> words;
  for (const Cut& cut : cuts_of(board_of(chalk))) words.push_back(cut.words.said());
  return words;
}

const std::string hour =
    "Warm-up 10 min\n\nStrength 12 min\n4 x 6 goblet squats, rest 75 s\n\nPIECE A\nAMRAP 11\n10 push-ups\n";

TEST(Cuts, AreOfPartsSetsClocksAndALongWarmUp) {
  const auto words = words_of(hour);
  EXPECT_THAT(words, Contains(HasSubstr("8:00 instead of 10:00")));
  EXPECT_THAT(words, Contains(HasSubstr("3 sets in 9:00 instead of 4 in 12:00")));
  EXPECT_THAT(words, Contains(HasSubstr("9:00 instead of 11:00")));
  EXPECT_THAT(words, Contains(HasSubstr("leave out")));
}

TEST(Cuts, TakeASetFromSetsWithoutAClock) {
  EXPECT_THAT(words_of("Strength\n4 x 6 goblet squats, rest 75 s\n\nAMRAP 10\n10 push-ups\n"),
              Contains(HasSubstr("3 sets instead of 4")));
}

TEST(Cuts, CallARestWithoutWordsARest) {
  const auto words = words_of("AMRAP 11\n10 push-ups\n\nRest 4:00\n\nAMRAP 11\n10 air squats\n");
  EXPECT_THAT(words, Contains("Rest: 3:00 instead of 4:00"));
}

TEST(Cuts, NeverLeaveOutTheLastPieceOrAShortWarmUp) {
  EXPECT_THAT(words_of("Warm-up 6 min\n\nPIECE A\nfor time\n10 push-ups\n"), IsEmpty());
  EXPECT_THAT(words_of("AMRAP 20\n10 push-ups\n"), Not(Contains(HasSubstr("leave out"))));
}

TEST(Cuts, ChangeOneThingOfTheBoard) {
  const domain::Board board = board_of(hour);
  for (const Cut& cut : cuts_of(board)) EXPECT_NE(cut.board, board) << cut.words.said();
}

/// A class that lasts as planned and works as long as its clocks run.
base::Result<domain::Consequences> as_planned(const domain::Board& board, int) {
  domain::Consequences told;
  for (const timetable::Box& box : timetable::lay_out(board, {}).boxes) {
    const double seconds = box.planned.value_or(base::Duration{}).si();
    told.end_p50_s += seconds;
    if (box.piece) told.work_s += seconds;
  }
  told.end_p90_s = told.end_p50_s + 60;
  return told;
}

TEST(Cuts, InOrderStandOnTopOfEachOther) {
  const auto cuts = cuts_in_order(board_of(hour), as_planned, {.most = 3}, rehearsal::one_after_another);
  ASSERT_TRUE(cuts);
  ASSERT_EQ(cuts->size(), 3u);
  double end = as_planned(board_of(hour), 1)->end_p90_s;
  double left = 1;
  for (const OrderedCut& one : *cuts) {
    const domain::HourCut& cut = one.told;
    EXPECT_GT(cut.gives_s, 0) << cut.words;
    EXPECT_DOUBLE_EQ(cut.end_p90_s, end - cut.gives_s) << cut.words;
    EXPECT_LE(cut.work_left, left) << cut.words;
    end = cut.end_p90_s;
    left = cut.work_left;
  }
}

TEST(Cuts, ThatLoseNoWorkComeBeforeThoseThatDo) {
  const auto cuts = cuts_in_order(board_of("Rest 5 min\n\nAMRAP 11\n10 push-ups\n"), as_planned, {.most = 1},
                                  rehearsal::one_after_another);
  ASSERT_TRUE(cuts);
  ASSERT_EQ(cuts->size(), 1u);
  EXPECT_THAT(cuts->front().told.words, HasSubstr("4:00 instead of 5:00"));
}

TEST(Cuts, TakeARoundAndItsShareOfTheCapAway) {
  const auto words = words_of("8 rounds for time, cap 40 min\n10 push-ups\n");
  EXPECT_THAT(words, Contains(HasSubstr("7 rounds, cap 35:00 instead of 8, cap 40:00")));
  EXPECT_THAT(words_of("for time, cap 30 min\n100 push-ups\n"),
              Contains(HasSubstr("cap 27:00 instead of 30:00")));
}

TEST(Cuts, EndWhereTheClassFits) {
  const double end = as_planned(board_of(hour), 1)->end_p90_s;
  const auto cuts = cuts_in_order(board_of(hour), as_planned, {.most = 4, .until_s = end - 150},
                                  rehearsal::one_after_another);
  ASSERT_TRUE(cuts);
  ASSERT_FALSE(cuts->empty());
  EXPECT_LE(cuts->back().told.end_p90_s, end - 150);
  for (std::size_t c = 0; c + 1 < cuts->size(); ++c) EXPECT_GT((*cuts)[c].told.end_p90_s, end - 150);
  EXPECT_TRUE(
      cuts_in_order(board_of(hour), as_planned, {.until_s = end}, rehearsal::one_after_another)->empty());
}

TEST(Cuts, FailAsTheTrialDoes) {
  const Trial broken = [](const domain::Board&, int) -> base::Result<domain::Consequences> {
    return base::failure(base::ErrorCode::Stopped, "stopped");
  };
  EXPECT_FALSE(cuts_in_order(board_of(hour), broken, {}, rehearsal::one_after_another));
}

}  // namespace
}  // namespace repwright::advice
