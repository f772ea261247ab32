#include "app/away_class.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "support/demo_gym.hpp"
#include "support/files.hpp"
#include "support/source_dir.hpp"

namespace repwright::app {
namespace {

using ::testing::HasSubstr;

base::Result<domain::AwayPlan> away(const std::string& chalk, const AwayWishes& wishes) {
  const auto gym = test::demo_gym();
  const board::Reading reading = board::read(chalk, gym->knowledge.catalogue, gym->knowledge.house);
  const domain::GymClass gym_class;
  return away_class({.reading = reading,
                     .gym = gym->knowledge,
                     .people = gym->people,
                     .gym_class = gym_class,
                     .heads = {},
                     .stop = {}},
                    wishes);
}

// Filled part by part: g++ 12 warns of an uninitialised set where such a value is made in one brace.
AwayWishes wishes_of(const std::string& who) {
  AwayWishes wishes;
  wishes.who = who;
  return wishes;
}

AwayWishes at_most(base::Duration length) {
  AwayWishes wishes;
  wishes.length = length;
  return wishes;
}

AwayWishes quietly() {
  AwayWishes wishes;
  wishes.place.quiet = true;
  return wishes;
}

AwayWishes in_a_room_of(base::Area room) {
  AwayWishes wishes;
  wishes.place.room = room;
  return wishes;
}

const domain::PatternSeconds* pattern(const domain::AwayPlan& plan, const std::string& name) {
  const auto found = std::ranges::find(plan.patterns, name, &domain::PatternSeconds::pattern);
  return found == plan.patterns.end() ? nullptr : &*found;
}

TEST(AwayClass, WorksEachPatternAsLongWithinFifteenPercent) {
  const auto plan =
      away("4 rounds for time\n8 pull-ups\n12 KB swings 16 kg\n20 air squats\n", wishes_of("a01"));
  ASSERT_TRUE(plan) << plan.error().message;
  for (const char* name : {"pull", "hinge", "squat"}) {
    const domain::PatternSeconds* sum = pattern(*plan, name);
    ASSERT_NE(sum, nullptr) << name;
    EXPECT_NEAR(sum->away_s, sum->here_s, 0.15 * sum->here_s) << name;
  }
}

TEST(AwayClass, IsChalkThatReadsWithoutErrorForEveryBoardOfTheDemo) {
  const auto gym = test::demo_gym();
  int boards = 0;
  for (const auto& file : std::filesystem::directory_iterator(test::source_dir() / "data/demo/boards")) {
    const auto plan = away(test::text_of_file(file.path()), quietly());
    ASSERT_TRUE(plan) << file.path() << " " << plan.error().message;
    const board::Reading again = board::read(plan->text, gym->knowledge.catalogue, gym->knowledge.house);
    for (const domain::Diagnostic& diagnostic : again.diagnostics)
      EXPECT_NE(diagnostic.severity, domain::Severity::Error) << file.path() << "\n"
                                                              << plan->text << diagnostic.text;
    ++boards;
  }
  EXPECT_GE(boards, 15);
}

TEST(AwayClass, FitsTheMinutes) {
  const auto plan = away("AMRAP 20\n10 push-ups\n20 air squats\n", at_most(12 * base::minute));
  ASSERT_TRUE(plan);
  EXPECT_LE(plan->away_s, 12.0 * 60);
  EXPECT_THAT(plan->text, HasSubstr("AMRAP 12"));
}

TEST(AwayClass, SaysWhoOrWhatIsNotThere) {
  const auto nobody = away("AMRAP 8\n10 push-ups\n", wishes_of("nobody"));
  ASSERT_FALSE(nobody);
  EXPECT_THAT(nobody.error().message, HasSubstr("nobody is called"));
  const auto nothing = away("AMRAP 8\n10 push-ups\n", in_a_room_of(0.1 * base::metre * base::metre));
  ASSERT_FALSE(nothing);
  EXPECT_THAT(nothing.error().message, HasSubstr("--room"));
}

}  // namespace
}  // namespace repwright::app
