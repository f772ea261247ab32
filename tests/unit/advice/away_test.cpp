#include "advice/away.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

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
