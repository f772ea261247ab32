#include "advice/repairs.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <string>

#include "advice/consequences.hpp"

namespace repwright::advice {
namespace {

using domain::Consequences;
using domain::Edit;
using domain::RepairKind;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

/// A board that is known by its title, and what its rehearsal would say.
domain::Board titled(const std::string& title) {
  return {.title = title, .blocks = {}};
}

Edit edit(RepairKind kind, const std::string& title, double change = 1) {
  return {.kind = kind,
          .block = {0},
          .steps = {},
          .words = title,
          .change = change,
          .board = titled(title),
          .text = {}};
}

/// Waits in seconds by title and number of runs; a title without any cannot be rehearsed.
struct Waits {
  std::map<std::string, double> few, many;

  base::Result<Consequences> operator()(const domain::Board& board, int runs) const {
    const auto& waits = runs < 100 ? few : many;
    const auto found = waits.find(board.title);
    if (found == waits.end()) return base::failure(base::ErrorCode::Invalid, "nobody can do that");
    return Consequences{.wait_s = found->second, .work_s = 600};
  }
};

std::vector<std::string> words_of(const domain::RepairPlan& plan) {
  std::vector<std::string> words;
  for (const domain::Repair& repair : plan.best) words.push_back(repair.edit.words);
  return words;
}

TEST(Repairs, AreRankedByWhatTheyGainPerChange) {
  const Waits waits{{{"now", 120}, {"big", 0}, {"small", 60}}, {{"now", 120}, {"big", 0}, {"small", 60}}};
  const auto plan = best_repairs(
      titled("now"), {edit(RepairKind::Heats, "big", 3), edit(RepairKind::OddStart, "small", 1)}, waits);
  ASSERT_TRUE(plan);
  EXPECT_THAT(words_of(*plan), ElementsAre("small", "big"));
  EXPECT_DOUBLE_EQ(plan->best[0].gain, 1);
  EXPECT_DOUBLE_EQ(plan->before.wait_s, 120);
}

TEST(Repairs, BelieveTheManyRunsOverTheFew) {
  const Waits waits{{{"now", 120}, {"lucky", 10}, {"sound", 60}},
                    {{"now", 120}, {"lucky", 119}, {"sound", 50}}};
  const auto plan = best_repairs(
      titled("now"), {edit(RepairKind::Swap, "lucky"), edit(RepairKind::OddStart, "sound")}, waits);
  ASSERT_TRUE(plan);
  EXPECT_THAT(words_of(*plan), ElementsAre("sound")) << "a second less is not worth a change";
}

TEST(Repairs, ShowOnlyTheBestOfOneIdea) {
  const Waits waits{{{"now", 120}, {"a", 60}, {"b", 30}}, {{"now", 120}, {"a", 60}, {"b", 30}}};
  const auto plan =
      best_repairs(titled("now"), {edit(RepairKind::OddStart, "a"), edit(RepairKind::OddStart, "b")}, waits);
  ASSERT_TRUE(plan);
  EXPECT_THAT(words_of(*plan), ElementsAre("b"));
}

TEST(Repairs, LeaveOutWhatCannotBeRehearsedOrMakesItWorse) {
  const Waits waits{{{"now", 30}, {"worse", 60}}, {{"now", 30}}};
  const auto plan = best_repairs(
      titled("now"), {edit(RepairKind::Stagger, "worse"), edit(RepairKind::Swap, "impossible")}, waits);
  ASSERT_TRUE(plan);
  EXPECT_THAT(plan->best, IsEmpty());
  EXPECT_EQ(plan->tried, 2);
}

/// Stops once so many trials were made.
struct Impatient {
  int patience;
  mutable int made = 0;
  base::Result<domain::Consequences> operator()(const domain::Board& board, int runs) const {
    if (++made > patience) return base::failure(base::ErrorCode::Stopped, "stopped");
    const std::map<std::string, double> waits = {{"now", 120}, {"a", 60}, {"b", runs > 32 ? 0.0 : 90.0}};
    return domain::Consequences{.wait_s = waits.at(board.title)};
  }
};

TEST(Repairs, ThatNobodyWaitsForAreTheBestSoFar) {
  const std::vector<Edit> edits = {edit(RepairKind::Swap, "a"), edit(RepairKind::OddStart, "b")};
  const auto whole = best_repairs(titled("now"), edits, Impatient{99});
  ASSERT_TRUE(whole);
  EXPECT_FALSE(whole->stopped);
  EXPECT_EQ(whole->runs, 200);
  EXPECT_THAT(words_of(*whole), ElementsAre("b", "a"));
  const auto of_all = best_repairs(titled("now"), edits, Impatient{4});
  ASSERT_TRUE(of_all);
  EXPECT_TRUE(of_all->stopped);
  EXPECT_EQ(of_all->runs, 32);
  EXPECT_THAT(words_of(*of_all), ElementsAre("a", "b"));
  const auto of_some = best_repairs(titled("now"), edits, Impatient{2});
  ASSERT_TRUE(of_some);
  EXPECT_THAT(words_of(*of_some), ElementsAre("a"));
  EXPECT_FALSE(best_repairs(titled("now"), edits, Impatient{0})) << "nothing is known so far";
}

TEST(Repairs, TellHowFarTheyHaveCome) {
  std::vector<int> told;
  Halving halving;
  halving.progress = [&](int done, int of) {
    EXPECT_EQ(of, 2 + halving.survivors + 2);
    told.push_back(done);
  };
  ASSERT_TRUE(best_repairs(titled("now"), {edit(RepairKind::Swap, "a"), edit(RepairKind::OddStart, "b")},
                           Impatient{99}, halving));
  EXPECT_THAT(told, ElementsAre(1, 2, 3, 4, 5, 6));
}

TEST(Repairs, FailWhenTheBoardItselfCannotBeRehearsed) {
  const auto plan = best_repairs(titled("now"), {}, Waits{});
  ASSERT_FALSE(plan);
  EXPECT_EQ(plan.error().code, base::ErrorCode::Invalid);
}

TEST(Burden, CountsWaitingPeopleStoppedRunningOverAndWorkLost) {
  EXPECT_DOUBLE_EQ(burden({.wait_s = 60, .work_s = 600}, 600), 1);
  EXPECT_DOUBLE_EQ(burden({.finished = 0.5, .work_s = 600}, 600), 1.5);
  EXPECT_DOUBLE_EQ(burden({.over_share = 0.2, .over_s = 120, .work_s = 600}, 600), 3);
  EXPECT_DOUBLE_EQ(burden({.work_s = 540}, 600), 1);
  EXPECT_DOUBLE_EQ(burden({.work_s = 600, .off_intent = 0.5}, 600), 1);
  EXPECT_DOUBLE_EQ(burden({.work_s = 660}, 600), 0) << "more work is no gain of a repair";
}

}  // namespace
}  // namespace repwright::advice
