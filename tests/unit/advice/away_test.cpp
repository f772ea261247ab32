#include "advice/away.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "support/shipped_catalogue.hpp"

namespace repwright::advice {
namespace {

using ::testing::IsEmpty;
using ::testing::Not;

const domain::Movement& movement(const std::string& id) {
  return *test::shipped_catalogue().find(domain::MovementId{id});
}
bool can(const std::string& id, const AwayPlace& place, const std::vector<domain::Limit>& limits = {}) {
  return possible(movement(id), place, test::shipped_catalogue(), limits);
}
std::string first_form(const std::string& id, const AwayPlace& place) {
  const auto forms = away_forms(movement(id), place, test::shipped_catalogue(), {});
  return forms.empty() ? "" : forms.front()->id.text;
}

TEST(Away, AllowsWhatKitRoomQuietAndLimitsAllow) {
  EXPECT_TRUE(can("push-up", {}));
  EXPECT_FALSE(can("pull-up", {}));
  EXPECT_TRUE(can("pull-up", {.kit = {{"pull-up-bar"}}}));
  EXPECT_FALSE(can("push-up", {.kit = {}, .room = 1 * base::metre * base::metre}));
  EXPECT_TRUE(can("jump-squat", {}));
  EXPECT_FALSE(can("jump-squat", {.kit = {}, .quiet = true}));
  EXPECT_FALSE(can("run", {}));
  EXPECT_TRUE(can("run", {.kit = {}, .outside = true}));
  EXPECT_FALSE(can("push-up", {}, {{{"wrist"}, "fists", {}}}));
}

TEST(Away, KeepsWhatIsPossibleAndElseTakesTheFormForHome) {
  EXPECT_EQ(first_form("push-up", {}), "push-up");
  EXPECT_EQ(first_form("pull-up", {}), "towel-row");
  EXPECT_EQ(first_form("run", {}), "high-knees");
  EXPECT_THAT(first_form("run", {.kit = {}, .quiet = true}), Not(::testing::AnyOf("high-knees", "run", "")));
}

TEST(Away, TakesTheKitThatIsThereForThePatternAndAsksNoMore) {
  const AwayPlace dumbbells{.kit = {{"dumbbell"}}};
  EXPECT_EQ(first_form("kb-swing", dumbbells), "db-deadlift");
  EXPECT_EQ(first_form("kb-deadlift", dumbbells), "db-deadlift");
  EXPECT_EQ(first_form("kb-goblet-squat", dumbbells), "db-front-squat");
  EXPECT_EQ(first_form("pull-up", dumbbells), "db-row") << "a chair to lean on";
  EXPECT_EQ(first_form("push-up", dumbbells), "push-up") << "needs none";
}

TEST(Away, SpareWhatALimitNamesWithTheCataloguesSwap) {
  const std::vector<domain::Limit> wrist{{{"wrist"}, "fists", {}}};
  const auto forms =
      away_forms(movement("push-up"), {.kit = {{"dumbbell"}}}, test::shipped_catalogue(), wrist);
  ASSERT_FALSE(forms.empty());
  EXPECT_EQ(forms.front()->id.text, "db-floor-press");
  for (const domain::Movement* form : away_forms(movement("push-up"), {}, test::shipped_catalogue(), wrist))
    EXPECT_NE(form->id.text, "wall-push-up");
}

TEST(Away, SendNobodyAcrossARoomThatHasNoLength) {
  EXPECT_FALSE(can("bear-crawl", {}));
  EXPECT_FALSE(can("walking-lunge", {}));
  EXPECT_TRUE(can("bear-crawl", {.kit = {}, .room = 30 * base::metre * base::metre}));
  EXPECT_TRUE(can("bear-crawl", {.kit = {}, .outside = true}));
}

TEST(Away, HaveSomethingOfAnotherPatternWhereItsOwnHasNothing) {
  const std::vector<domain::Limit> standing{{{"no-floor"}, "standing", {}}};
  EXPECT_THAT(away_forms(movement("sit-up"), {}, test::shipped_catalogue(), standing), IsEmpty());
  const auto others = away_others(movement("sit-up"), {}, test::shipped_catalogue(), standing);
  ASSERT_THAT(others, Not(IsEmpty()));
  for (const domain::Movement* other : others)
    EXPECT_FALSE(domain::forbidden(*other, {"no-floor"})) << other->id.text;
  EXPECT_THAT(others.front()->easier, IsEmpty()) << "easy enough for everybody";
}

TEST(Away, WarmUpWithDrillsThatLimitsRoomAndQuietAllow) {
  const AwayPlace hotel{.kit = {}, .quiet = true};
  const auto drills = away_drills(test::shipped_catalogue(), hotel, {{{"no-floor"}, "standing", {}}});
  ASSERT_THAT(drills, Not(IsEmpty()));
  for (const domain::Drill& drill : drills)
    for (const char* kit : {"band", "rings", "stick", "kettlebell", "course"})
      EXPECT_EQ(std::ranges::find(drill.equipment, kit), drill.equipment.end()) << drill.id;
  for (const domain::Drill& drill : drills)
    for (const char* flag : {"floor", "jump"})
      EXPECT_EQ(std::ranges::find(drill.flags, flag), drill.flags.end()) << drill.id;
}

TEST(Away, FindsAFormForEveryMovementInAQuietHotelRoom) {
  const AwayPlace hotel{.kit = {}, .quiet = true};
  for (const domain::Movement& one : test::shipped_catalogue().movements)
    EXPECT_THAT(away_forms(one, hotel, test::shipped_catalogue(), {}), Not(IsEmpty())) << one.id.text;
}

TEST(Away, FindsNothingWhereThereIsNoRoomAtAll) {
  const AwayPlace cupboard{.kit = {}, .room = 0.1 * base::metre * base::metre};
  EXPECT_THAT(away_forms(movement("push-up"), cupboard, test::shipped_catalogue(), {}), IsEmpty());
}

TEST(Away, WritesTheLineWithoutKitAndCrowd) {
  domain::Item line;
  line.movement = {"kb-swing"};
  line.amount = 20.0;
  line.loads = domain::Loads{{16 * base::kilogram}, false};
  line.second_station = domain::MovementId{"ring-row"};
  const domain::Item away = as_form(line, movement("hip-hinge"), 1.5);
  EXPECT_EQ(away.movement, domain::MovementId{"hip-hinge"});
  EXPECT_EQ(std::get<double>(away.amount), 30);
  EXPECT_FALSE(away.loads);
  EXPECT_FALSE(away.second_station);
}

}  // namespace
}  // namespace repwright::advice
