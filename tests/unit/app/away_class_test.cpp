#include "app/away_class.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "rehearsal/board_items.hpp"
#include "solver/cbc_solver.hpp"
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
  solver::CbcSolver solver;
  return away_class({.reading = reading,
                     .gym = gym->knowledge,
                     .people = gym->people,
                     .gym_class = gym_class,
                     .heads = {},
                     .stop = {}},
                    wishes, solver);
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

const char* const two_clocks = "data/demo/boards/sat-two-clocks.txt";

std::vector<const domain::Movement*> movements_of(const std::string& chalk) {
  const auto gym = test::demo_gym();
  const board::Reading reading = board::read(chalk, gym->knowledge.catalogue, gym->knowledge.house);
  std::vector<const domain::Movement*> found;
  for (const rehearsal::ItemAt& line : rehearsal::items_by_step(reading.board))
    if (line.item != nullptr && line.item->movement)
      found.push_back(gym->knowledge.catalogue.find(*line.item->movement));
  return found;
}

TEST(AwayClass, KeepsTheLimitsOfEverybodyOnEveryLine) {
  for (const domain::Person& person : test::demo_gym()->people) {
    if (person.limits.empty()) continue;
    const auto plan = away(test::text_of_file(test::source_dir() / two_clocks), wishes_of(person.id.text));
    ASSERT_TRUE(plan) << plan.error().message;
    for (const domain::Movement* movement : movements_of(plan->text)) {
      ASSERT_NE(movement, nullptr) << plan->text;
      for (const domain::Limit& limit : person.limits)
        EXPECT_FALSE(domain::forbidden(*movement, limit.limit)) << person.name << " " << movement->id.text;
    }
  }
}

TEST(AwayClass, LeavesEveryListItsSecondMovement) {
  for (const char* who : {"a07", "a15", "a17"}) {
    const auto plan =
        away("AMRAP 11\n14 hanging knee raises\n18 KB swings 16/12\n11 sit-ups\n", wishes_of(who));
    ASSERT_TRUE(plan) << plan.error().message;
    const auto movements = movements_of(plan->text);
    EXPECT_EQ(movements.size(), 3u) << plan->text;
    EXPECT_GE((std::set<const domain::Movement*>(movements.begin(), movements.end()).size()), 2u)
        << plan->text;
  }
}

TEST(AwayClass, UsesTheKitThatIsThere) {
  AwayWishes wishes = wishes_of("a01");
  wishes.place.kit = {{"dumbbell"}};
  const auto plan = away("AMRAP 11\n8 pull-ups\n12 goblet squats\n", wishes);
  ASSERT_TRUE(plan) << plan.error().message;
  for (const domain::Movement* movement : movements_of(plan->text))
    EXPECT_EQ(std::ranges::count(movement->equipment, domain::EquipmentId{"dumbbell"}), 1) << plan->text;
}

TEST(AwayClass, WarmsUpWithoutTheHallAndWithinLimits) {
  const auto plan = away(test::text_of_file(test::source_dir() / two_clocks), wishes_of("a17"));
  ASSERT_TRUE(plan) << plan.error().message;
  EXPECT_THAT(plan->text, HasSubstr("Warm-up"));
  for (const char* gone :
       {"band", "strap", "stick pass", "coach", "push-up ladder", "cat and arch", "bridge"})
    EXPECT_THAT(plan->text, ::testing::Not(HasSubstr(gone)));
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
