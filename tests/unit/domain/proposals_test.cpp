#include "domain/proposals.hpp"

#include <gtest/gtest.h>

#include "domain/ladder.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::domain {
namespace {

bool proposed(const std::string& id, const Hall& hall, const House& house = {}) {
  const Catalogue& catalogue = test::shipped_catalogue();
  return may_propose({catalogue, hall, house}, *catalogue.find(MovementId{id}));
}

Hall with_bars() {
  Hall hall;
  hall.unlimited = false;
  hall.places.push_back({.equipment = {"pull-up-bar"}, .count = 8});
  return hall;
}

TEST(Proposals, NeedThePlacesThatTheHallLists) {
  EXPECT_TRUE(proposed("ring-row", {})) << "a hall that lists nothing has enough of everything";
  EXPECT_FALSE(proposed("ring-row", with_bars()));
  EXPECT_FALSE(proposed("fan-bike", with_bars()));
  EXPECT_FALSE(proposed("stair-climb", with_bars()));
  EXPECT_TRUE(proposed("pull-up", with_bars()));
  EXPECT_TRUE(proposed("kb-swing", with_bars())) << "loose kit is counted elsewhere";
}

TEST(Proposals, SwingOnlyWhereTheHouseLetsPullUpsSwing) {
  House house;
  EXPECT_FALSE(proposed("kip-pull-up", with_bars(), house));
  EXPECT_FALSE(proposed("kip-pull-up", {}, house));
  EXPECT_TRUE(proposed("toes-to-bar", with_bars(), house));
  house.pull_up_may_swing = true;
  EXPECT_TRUE(proposed("kip-pull-up", with_bars(), house));
}

TEST(Ladder, CountsTheStepsToAnEasierVersion) {
  const auto steps = [](const char* from, const char* to) {
    return steps_down(test::shipped_catalogue(), MovementId{from}, MovementId{to});
  };
  EXPECT_EQ(steps("push-up", "incline-push-up"), 1);
  EXPECT_GT(steps("pull-up", "ring-row"), 0);
  EXPECT_EQ(steps("incline-push-up", "push-up"), 0);
  EXPECT_EQ(steps("push-up", "push-up"), 0);
}

}  // namespace
}  // namespace repwright::domain
