#include "advice/targets.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "board/read.hpp"
#include "rehearsal/floor.hpp"
#include "support/shipped.hpp"

namespace repwright::advice {
namespace {

using ::testing::IsEmpty;

/// Nine people in one piece, each of whom scores the same in all of ten runs.
struct Nine {
  explicit Nine(const std::string& chalk) : board(board::read(chalk, test::shipped_catalogue(), {}).board) {
    timetable = timetable::lay_out(board, {});
    uncapped.piece_names = {"For time"};
    uncapped.people.resize(9);
    for (domain::PersonOutcome& person : uncapped.people) person.pieces.resize(1);
  }
  void score(int person, double score) {
    for (int run = 0; run < 10; ++run)
      uncapped.draws.push_back(
          {.person = person, .piece = 0, .run = run, .score = score, .vo2max = 40, .step_ends_s = {}});
  }
  std::vector<domain::PieceTarget> targets() const {
    const auto given = levels.empty() ? std::vector<std::optional<int>>(9) : levels;
    return targets_of({.board = board, .timetable = timetable, .uncapped = uncapped, .levels = given});
  }

  domain::Board board;
  timetable::Timetable timetable;
  domain::Rehearsal uncapped;
  std::vector<std::optional<int>> levels;
};

TEST(Targets, CapWhereEnoughAreHomeAndTellEachThirdWhatToAimAt) {
  Nine class_of("5 rounds for time, cap 10\n10 push-ups\n");
  for (int p = 0; p < 9; ++p) class_of.score(8 - p, 600 + 60.0 * p + 1);
  const auto targets = class_of.targets();
  ASSERT_EQ(targets.size(), 1u);
  ASSERT_TRUE(targets[0].cap);
  EXPECT_EQ(targets[0].cap->seconds, 18 * 60) << "eight of nine are 89 %, seven 78 %";
  EXPECT_DOUBLE_EQ(targets[0].cap->home, 8.0 / 9);
  EXPECT_EQ(targets[0].cap->now_s, 600);
  EXPECT_EQ(targets[0].cap->home_now, 0);
  ASSERT_EQ(targets[0].levels.size(), 3u);
  EXPECT_EQ(targets[0].levels[0].name, "quickest third");
  EXPECT_EQ(targets[0].levels[0].people, 3);
  EXPECT_DOUBLE_EQ(targets[0].levels[0].from, 601);
  EXPECT_DOUBLE_EQ(targets[0].levels[0].to, 721);
  EXPECT_DOUBLE_EQ(targets[0].levels[2].to, 1081);
}

TEST(Targets, LeaveACapByWhichEnoughAreHome) {
  Nine class_of("5 rounds for time, cap 19:30\n10 push-ups\n");
  for (int p = 0; p < 9; ++p) class_of.score(p, p == 8 ? 1300 : 600);
  const auto targets = class_of.targets();
  ASSERT_TRUE(targets.at(0).cap);
  EXPECT_EQ(targets[0].cap->seconds, 19.5 * 60);
  EXPECT_DOUBLE_EQ(targets[0].cap->home, 8.0 / 9);
}

TEST(Targets, CountWhoIsNeverHomeAgainstEveryCapAndInNoRange) {
  Nine class_of("5 rounds for time\n10 push-ups\n");
  for (int p = 0; p < 9; ++p) class_of.score(p, p < 2 ? rehearsal::longest_piece : 600);
  const auto targets = class_of.targets();
  ASSERT_EQ(targets.size(), 1u);
  EXPECT_FALSE(targets[0].cap) << "78 % are home by any cap";
  for (const domain::LevelTarget& level : targets[0].levels) EXPECT_DOUBLE_EQ(level.to, 600);
}

TEST(Targets, GoByTheLevelsOfTheBoard) {
  Nine class_of("A / B\n5 rounds for time\n12/8 pull-ups\n");
  ASSERT_EQ(class_of.board.blocks.front().levels.size(), 2u);
  for (int p = 0; p < 9; ++p) class_of.score(p, p < 4 ? 700 : 500);
  for (int p = 0; p < 9; ++p) class_of.levels.emplace_back(p < 4 ? 0 : 1);
  const auto targets = class_of.targets();
  ASSERT_EQ(targets.at(0).levels.size(), 2u);
  EXPECT_EQ(targets[0].levels[0].name, "A");
  EXPECT_EQ(targets[0].levels[0].people, 4);
  EXPECT_DOUBLE_EQ(targets[0].levels[0].from, 700);
  EXPECT_DOUBLE_EQ(targets[0].levels[1].from, 500);
}

TEST(Targets, OfAClockThatRunsDownAreRoundsAndNoCap) {
  Nine class_of("AMRAP 10\n10 push-ups\n15 squats\n");
  for (int p = 0; p < 9; ++p) class_of.score(p, 100);
  for (domain::PersonOutcome& person : class_of.uncapped.people) {
    domain::PieceOutcome& piece = person.pieces[0];
    piece.measure = domain::Measure::Reps;
    piece.reps_per_round = 25;
    piece.steps.resize(2);
    piece.steps[0].end_s = 70;
    piece.steps[1].round = 1;
    piece.steps[1].end_s = 160;
  }
  const auto targets = class_of.targets();
  ASSERT_EQ(targets.size(), 1u);
  EXPECT_FALSE(targets[0].cap);
  EXPECT_TRUE(targets[0].in_rounds);
  EXPECT_DOUBLE_EQ(targets[0].levels.at(1).from, 4);
  EXPECT_EQ(targets[0].levels.at(1).first_round_s, 70);
}

TEST(Targets, AreNotSetForTheSameWorkInEachInterval) {
  Nine class_of("EMOM 10\n10 push-ups\n");
  for (int p = 0; p < 9; ++p) class_of.score(p, 100);
  for (domain::PersonOutcome& person : class_of.uncapped.people)
    person.pieces[0].measure = domain::Measure::Reps;
  EXPECT_THAT(class_of.targets(), IsEmpty());
}

TEST(Targets, TakeTheCapsOffPiecesButNotOffWindows) {
  const domain::Board board =
      board::read("5 rounds for time, cap 12\n10 push-ups\n", test::shipped_catalogue(), {}).board;
  EXPECT_FALSE(without_caps(board, timetable::lay_out(board, {})).blocks.front().cap);
  const domain::Board windows =
      board::read("0-4 500 m row\n4-8 40 box step-ups\n", test::shipped_catalogue(), {}).board;
  EXPECT_EQ(without_caps(windows, timetable::lay_out(windows, {})), windows);
}

}  // namespace
}  // namespace repwright::advice
