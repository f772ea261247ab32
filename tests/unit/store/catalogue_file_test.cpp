#include "store/catalogue_file.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "support/shipped.hpp"
#include "support/source_dir.hpp"

namespace repwright::store {
namespace {

using base::kilogram;
using base::metre;
using base::second;
using domain::Movement;
using domain::Unit;

const domain::Catalogue& shipped() {
  return test::shipped_catalogue();
}

TEST(ShippedCatalogue, HoldsEveryRowOfTheTrade) {
  // 119 movements and 47 drills of the first collection; 105 movements, the hip bench, a course for runs, the
  // tyre, the battle rope, the carry frame, the pool lane and the roll-out wheel added to it.
  EXPECT_EQ(shipped().version, 1);
  EXPECT_EQ(shipped().movements.size(), 224U);
  EXPECT_EQ(shipped().drills.size(), 47U);
  EXPECT_EQ(shipped().equipment.size(), 37U);
  EXPECT_EQ(shipped().limits.size(), 10U);
  EXPECT_EQ(shipped().terms.muscles.size(), 12U);
  EXPECT_EQ(shipped().terms.patterns.size(), 9U);
  EXPECT_EQ(shipped().ambiguous_words.size(), 47U);
  EXPECT_TRUE(std::ranges::is_sorted(shipped().movements, {}, &Movement::id));
}

TEST(ShippedCatalogue, ReadsTheStepUpWhole) {
  const Movement* step_up = shipped().find(domain::MovementId{"box-step-up"});
  ASSERT_NE(step_up, nullptr);
  EXPECT_EQ(step_up->name, "Step-up to a box");
  EXPECT_EQ(step_up->category, "box");
  EXPECT_THAT(step_up->aliases, testing::Contains("box step ups"));
  EXPECT_EQ(step_up->patterns, std::vector<std::string>{"lunge"});
  EXPECT_EQ(step_up->primary_muscles, (std::vector<std::string>{"quads", "glutes"}));
  EXPECT_EQ(step_up->secondary_muscles, (std::vector<std::string>{"hamstrings", "calves"}));
  EXPECT_EQ(step_up->equipment, std::vector<domain::EquipmentId>{{"box"}});
  EXPECT_EQ(step_up->space, 2.4 * (metre * metre));
  EXPECT_EQ(step_up->ceiling, 2.6 * metre);
  EXPECT_EQ(step_up->station, domain::Station::Own);
  EXPECT_EQ(step_up->pace.at(Unit::Reps), (domain::Pace{1.8, 2.4}));
  EXPECT_EQ(step_up->unbroken, (domain::UnbrokenSet{20, 50, 120}));
  EXPECT_EQ(step_up->break_rest, 6 * second);
  EXPECT_EQ(step_up->on_off, 2 * second);
  EXPECT_EQ(step_up->body_fraction, 0.95);
  EXPECT_EQ(step_up->impact, domain::Impact::Low);
  EXPECT_EQ(step_up->home, (std::vector<domain::HomeVersion>{{{"reverse-lunge"}, 1, "reps"}}));
  EXPECT_EQ(step_up->source, "common practice");
}

TEST(ShippedCatalogue, ReadsTheRowerWithThreeUnitsAndTwoHomeVersions) {
  const Movement* rower = shipped().find(domain::MovementId{"rower"});
  ASSERT_NE(rower, nullptr);
  EXPECT_EQ(rower->default_unit, Unit::Metres);
  EXPECT_EQ(rower->pace.at(Unit::Metres), (domain::Pace{0.226, 0.27}));
  EXPECT_EQ(rower->pace.at(Unit::Kilocalories), (domain::Pace{3.2, 4.6}));
  EXPECT_EQ(rower->pace.at(Unit::Seconds), (domain::Pace{1, 1}));
  EXPECT_FALSE(rower->unbroken.has_value());
  ASSERT_EQ(rower->home.size(), 2U);
  EXPECT_EQ(rower->home[1], (domain::HomeVersion{{"burpee"}, 0.6, "reps-per-kcal"}));
  EXPECT_EQ(rower->swap_for.size(), 3U);
}

TEST(ShippedCatalogue, ReadsTheCleanAndJerkWithATimeAndLoadsOfItsOwn) {
  const Movement* lift = shipped().find(domain::MovementId{"bb-clean-and-jerk"});
  ASSERT_NE(lift, nullptr);
  EXPECT_THAT(lift->aliases, testing::Contains("clean and jerk"));
  EXPECT_EQ(lift->typical_load, (domain::TypicalLoad{20 * kilogram, 40 * kilogram, 65 * kilogram}));
  const Movement* any_way = shipped().find(domain::MovementId{"bb-ground-to-overhead"});
  EXPECT_THAT(any_way->aliases, testing::Not(testing::Contains("clean and jerk")));
  EXPECT_GT(lift->pace.at(Unit::Reps).brisk, any_way->pace.at(Unit::Reps).brisk);
}

TEST(ShippedCatalogue, ReadsADrillWhole) {
  const auto at = std::ranges::find(shipped().drills, "side-shuffle", &domain::Drill::id);
  ASSERT_NE(at, shipped().drills.end());
  EXPECT_EQ(at->phase, "raise");
  EXPECT_EQ(at->joints, (std::vector<std::string>{"hip", "ankle", "knee"}));
  EXPECT_EQ(at->length, 60 * second);
  EXPECT_EQ(at->equipment, std::vector<std::string>{"cone"});
  EXPECT_EQ(at->coach_line, "Chest faces the wall all the way.");
  EXPECT_EQ(at->home_kind, "drill");
  EXPECT_EQ(at->home_drill, "step-side-in-room");
  EXPECT_EQ(at->effort, 3);
}

TEST(ShippedCatalogue, HasWhatACoachAsksForBeyondTheFirstCollection) {
  for (const char* id : {"bb-overhead-squat", "bb-high-pull", "bb-clean-and-jerk", "db-hang-clean-and-jerk",
                         "back-extension", "squat-thrust", "knees-to-elbows", "sled-pull",
                         "burpee-broad-jump", "bag-lunge", "bar-muscle-up", "ring-muscle-up"}) {
    const Movement* movement = shipped().find(domain::MovementId{id});
    ASSERT_NE(movement, nullptr) << id;
    EXPECT_FALSE(movement->easier.empty()) << id;
    EXPECT_TRUE(movement->unbroken.has_value()) << id;
    EXPECT_GE(movement->cautions.size(), 2U) << id;
    EXPECT_GE(movement->aliases.size(), 2U) << id;
  }
}

TEST(ShippedCatalogue, GivesEveryMovementAStandardTwoCuesAndACaution) {
  for (const Movement& movement : shipped().movements) {
    EXPECT_FALSE(movement.standard_start.empty()) << movement.id.text;
    EXPECT_FALSE(movement.standard_finish.empty()) << movement.id.text;
    EXPECT_GE(movement.faults.size(), 2U) << movement.id.text;
    EXPECT_GE(movement.cautions.size(), 1U) << movement.id.text;
    EXPECT_FALSE(movement.source.empty()) << movement.id.text;
  }
}

TEST(ShippedCatalogue, NeverSwapsIntoAMovementThatTheSameLimitForbids) {
  int swaps = 0;
  for (const Movement& movement : shipped().movements)
    for (const domain::LimitId& limit : movement.avoid_with) {
      ASSERT_TRUE(movement.swap_for.contains(limit)) << movement.id.text << " " << limit.text;
      const Movement* target = shipped().find(movement.swap_for.at(limit));
      ASSERT_NE(target, nullptr) << movement.id.text << " " << limit.text;
      EXPECT_FALSE(forbidden(*target, limit)) << movement.id.text << " " << limit.text;
      ++swaps;
    }
  EXPECT_GT(swaps, 250);
}

TEST(ShippedCatalogue, LetsSmallWorkAndStretchesStandInForNothing) {
  for (const char* id : {"db-curl", "bb-curl", "db-triceps-extension", "db-lateral-raise", "band-pull-apart",
                         "band-face-pull", "stick-pass-through", "spine-wave"}) {
    const Movement* movement = shipped().find(domain::MovementId{id});
    ASSERT_NE(movement, nullptr) << id;
    EXPECT_TRUE(movement->patterns.empty()) << id;
  }
}

TEST(ShippedCatalogue, AsksForAHeavyTyreOfNobodyWhoDoesSomethingElse) {
  for (const Movement& movement : shipped().movements) {
    for (const auto& [limit, target] : movement.swap_for)
      EXPECT_NE(target.text, "tyre-flip") << movement.id.text << " " << limit.text;
    EXPECT_THAT(movement.easier, testing::Not(testing::Contains(domain::MovementId{"tyre-flip"})))
        << movement.id.text;
  }
}

TEST(ShippedCatalogue, LiftsAShorterWayFromTheHangThanFromTheFloor) {
  for (const auto& [hang, floor] : {std::pair{"bb-hang-power-clean", "bb-power-clean"},
                                    {"bb-hang-squat-clean", "bb-squat-clean"},
                                    {"bb-hang-power-snatch", "bb-power-snatch"},
                                    {"db-hang-snatch", "db-snatch"}}) {
    const Movement* shorter = shipped().find(domain::MovementId{hang});
    const Movement* longer = shipped().find(domain::MovementId{floor});
    ASSERT_TRUE(shorter != nullptr && longer != nullptr) << hang;
    EXPECT_LT(*shorter->rise, *longer->rise) << hang;
    EXPECT_LT(shorter->pace.at(Unit::Reps).brisk, longer->pace.at(Unit::Reps).brisk) << hang;
  }
}

TEST(ShippedCatalogue, HasTheSameLaddersFromBothEnds) {
  for (const Movement& movement : shipped().movements) {
    for (const domain::MovementId& id : movement.easier)
      EXPECT_THAT(shipped().find(id)->harder, testing::Contains(movement.id)) << id.text;
    for (const domain::MovementId& id : movement.harder)
      EXPECT_THAT(shipped().find(id)->easier, testing::Contains(movement.id)) << id.text;
  }
}

TEST(LoadCatalogue, SaysWhichFolderHoldsNone) {
  const auto loaded = load_catalogue("/nowhere/at/all", std::nullopt);
  ASSERT_FALSE(loaded.has_value());
  EXPECT_EQ(loaded.error().code, base::ErrorCode::NotFound);
  EXPECT_THAT(loaded.error().message, testing::HasSubstr("/nowhere/at/all"));
}

}  // namespace
}  // namespace repwright::store
