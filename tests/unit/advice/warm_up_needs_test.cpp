#include "advice/warm_up_needs.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "board/read.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::advice {
namespace {

using domain::NeedKind;
using domain::WarmUpNeed;
using ::testing::IsEmpty;

std::vector<WarmUpNeed> needs_of(const std::string& chalk) {
  const board::Reading reading = board::read(chalk, test::shipped_catalogue(), {});
  return warm_up_needs(lines_to_prepare(reading.board), test::shipped_catalogue());
}

/// 0 if it is not asked for.
int weight_of(const std::vector<WarmUpNeed>& needs, NeedKind kind, const std::string& id) {
  const auto found =
      std::ranges::find_if(needs, [&](const WarmUpNeed& need) { return need.kind == kind && need.id == id; });
  return found == needs.end() ? 0 : found->weight;
}

TEST(WarmUpNeeds, AreTheJointsPatternsAndMusclesOfTheLines) {
  const auto needs = needs_of("AMRAP 8\n10 push-ups\n");
  EXPECT_GT(weight_of(needs, NeedKind::Pattern, "push"), 0);
  EXPECT_GT(weight_of(needs, NeedKind::Joint, "wrist"), 0);
  EXPECT_GT(weight_of(needs, NeedKind::Muscle, "chest"), 0);
  EXPECT_EQ(weight_of(needs, NeedKind::Pattern, "hinge"), 0);
}

TEST(WarmUpNeeds, GrowWithTheLoad) {
  const auto heavy = needs_of("back squat 5x3 @ 85%\n");
  const auto light = needs_of("back squat 5x3 @ 50%\n");
  EXPECT_GT(weight_of(heavy, NeedKind::Pattern, "squat"), weight_of(light, NeedKind::Pattern, "squat"));
}

TEST(WarmUpNeeds, GrowWithTheSpeed) {
  const auto fast = needs_of("5 rounds for time\n200 m run\n");
  const auto slow = needs_of("for time\n3000 m run\n");
  EXPECT_GT(weight_of(fast, NeedKind::Pattern, "locomotion"),
            weight_of(slow, NeedKind::Pattern, "locomotion"));
}

TEST(WarmUpNeeds, WeighAJointAtTheEndOfItsRangeMost) {
  const auto needs = needs_of("AMRAP 8\n10 pull-ups\n");
  EXPECT_EQ(needs.front().kind, NeedKind::Joint);
  EXPECT_EQ(needs.front().id, "shoulder");
  EXPECT_EQ(needs.front().because, "pull-ups");
}

TEST(WarmUpNeeds, LeaveOutTheWarmUpItselfAndTheCoolDown) {
  const auto needs = needs_of(
      "Warm-up 8'\n2 rounds\n10 push-ups\n\nPIECE A - 8:00 on the clock\nAMRAP 8\n15 squats\n\nCool-down "
      "5'\n10 sit-ups\n");
  EXPECT_EQ(weight_of(needs, NeedKind::Pattern, "push"), 0);
  EXPECT_GT(weight_of(needs, NeedKind::Pattern, "squat"), 0);
  EXPECT_EQ(weight_of(needs, NeedKind::Pattern, "trunk"), 0);
}

TEST(WarmUpNeeds, AreNoneWhereNothingIsKnown) {
  EXPECT_THAT(needs_of("AMRAP 8\n10 zzzzing gizmos\n"), IsEmpty());
  EXPECT_THAT(needs_of("rest day"), IsEmpty());
}

}  // namespace
}  // namespace repwright::advice
