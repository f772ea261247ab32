#include "app/due_home.hpp"

#include <gtest/gtest.h>

#include "support/demo_gym.hpp"

namespace repwright::app {
namespace {

/// The Saturday of the demo gym with another board.
std::vector<DueHome> due_on(const std::string& text) {
  OpenGym gym = *test::demo_gym();
  gym.knowledge.boards["one"] = text;
  gym.classes.at("sat-24").board_id = "one";
  return due_home(GymAtHand(std::move(gym)), "sat-24", {}).value();
}

TEST(DueHome, TellsTheFirstTheMiddleAndTheLastOfAPieceForTimeInThisOrder) {
  const auto due = due_on("for time\n800 m run\n30 push-ups\n");
  ASSERT_EQ(due.size(), 1u);
  EXPECT_EQ(due[0].people, 24);
  EXPECT_LT(due[0].first_s, due[0].middle_s);
  EXPECT_LT(due[0].middle_s, due[0].last_s);
  EXPECT_LE(due[0].last_s, due[0].last_late_s);
  // A mixed class covers 1600 m in about 6 to 10 minutes and 800 m in about half of that (common practice, no
  // source): nobody is home before the run.
  EXPECT_GT(due[0].first_s, 150);
}

TEST(DueHome, TellsEachHeatFromItsOwnSignal) {
  const auto due = due_on("for time\n2 heats\n400 m run\n20 push-ups\n");
  ASSERT_EQ(due.size(), 2u);
  EXPECT_EQ(due[0].people + due[1].people, 24);
  EXPECT_EQ(due[1].heat, 1);
  // 400 m takes a mixed class 1 to 2 minutes (common practice, no source); the second heat does not wait in
  // it.
  EXPECT_LT(due[1].first_s, 2 * due[0].first_s);
}

TEST(DueHome, SuggestsALastCallOnlyWhereAFewAreMuchLaterThanTheOthers) {
  const auto due = due_on("for time\n1600 m run\n60 push-ups\n");
  ASSERT_EQ(due.size(), 1u);
  ASSERT_TRUE(due[0].call_s);
  EXPECT_GT(*due[0].call_s, due[0].middle_s);
  EXPECT_GT(due[0].last_s - *due[0].call_s, 60);
  EXPECT_EQ(due[0].out_at_call, 3) << "of 24, when nine in ten are home";
  EXPECT_FALSE(due_on("for time\n10 air squats\n").at(0).call_s);
}

TEST(DueHome, SaysNothingOfPiecesThatEndByTheClock) {
  EXPECT_TRUE(due_on("10 min AMRAP\n5 pull-ups\n10 push-ups\n").empty());
  EXPECT_TRUE(due_on("EMOM 6\n10 air squats\n").empty());
}

TEST(DueHome, KnowsNoClassThatIsNotThere) {
  EXPECT_EQ(due_home(GymAtHand(*test::demo_gym()), "never", {}).error().code, base::ErrorCode::NotFound);
}

}  // namespace
}  // namespace repwright::app
