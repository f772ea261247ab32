#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string_view>

#include "support/shipped_catalogue.hpp"
#include "support/small_catalogue.hpp"

/// What somebody avoids follows from what a row asks of the body, for movements and for drills.
namespace repwright::store {
namespace {

using ::testing::HasSubstr;

bool has(const std::vector<std::string>& flags, std::string_view flag) {
  return std::ranges::find(flags, flag) != flags.end();
}

bool implied(const domain::LimitKind& limit, const std::vector<std::string>& flags, bool lands_hard) {
  return std::ranges::any_of(limit.from_flags, [&](const std::string& flag) {
    return flag == "@impact-high" ? lands_hard : has(flags, flag);
  });
}

TEST(CatalogueLimits, OfEveryMovementCoverItsFlags) {
  for (const domain::Movement& movement : test::shipped_catalogue().movements)
    for (const domain::LimitKind& limit : test::shipped_catalogue().limits)
      if (implied(limit, movement.flags, movement.impact == domain::Impact::High)) {
        EXPECT_TRUE(domain::forbidden(movement, limit.id)) << movement.id.text << " " << limit.id.text;
      }
}

TEST(CatalogueLimits, OfEveryDrillCoverItsFlags) {
  for (const domain::Drill& drill : test::shipped_catalogue().drills)
    for (const domain::LimitKind& limit : test::shipped_catalogue().limits)
      if (implied(limit, drill.flags, has(drill.flags, "jump"))) {
        EXPECT_NE(std::ranges::find(drill.avoid_with, limit.id), drill.avoid_with.end())
            << drill.id << " " << limit.id.text;
      }
}

/// What is done with the hands on a wall or the floor, on the back, or with the arms up is flagged so
/// (common practice, no source).
TEST(CatalogueLimits, ReadTheDrillAndTheMovementAsTheyAreDone) {
  const auto avoids = [](const std::string& id, const std::string& limit) {
    const auto& drills = test::shipped_catalogue().drills;
    const auto drill = std::ranges::find(drills, id, &domain::Drill::id);
    return drill != drills.end() &&
           std::ranges::find(drill->avoid_with, domain::LimitId{limit}) != drill->avoid_with.end();
  };
  EXPECT_TRUE(avoids("push-ladder", "no-floor"));
  EXPECT_TRUE(avoids("wrist-prep", "wrist"));
  EXPECT_TRUE(avoids("nineties", "wrist")) << "the hands are behind, on the floor";
  EXPECT_TRUE(avoids("open-book", "pregnancy")) << "turns onto the back";
  EXPECT_TRUE(avoids("inchworm-drill", "head-down"));
  EXPECT_TRUE(avoids("easy-jog-lap", "no-impact"));
  EXPECT_TRUE(avoids("lunge-reach", "shoulder"));
  EXPECT_TRUE(
      domain::forbidden(*test::shipped_catalogue().find(domain::MovementId{"wall-push-up"}), {"wrist"}));
}

/// At home a drill is done as its text says, by people whose limits are read from the drill.
TEST(CatalogueLimits, NoFormOfAStandingDrillForHomeGoesToTheFloor) {
  for (const domain::Drill& drill : test::shipped_catalogue().drills) {
    if (drill.home_kind != "text" || has(drill.flags, "floor")) continue;
    for (const std::string_view down : {"prone", "lying", "on the back", "on the floor", "hands and knees"})
      EXPECT_EQ(drill.home_text.find(down), std::string::npos) << drill.id << ": " << drill.home_text;
  }
}

std::string drill_text(const std::string& flags, const std::string& avoid) {
  return "[[drill]]\nid = \"lean\"\nname = \"Lean\"\nphase = \"activate\"\njoints = [\"wrist\"]\n"
         "patterns = [\"push\"]\nmuscles = [\"chest\"]\nseconds = 30\nboth_sides_included = false\n"
         "equipment = []\nhow = \"Lean.\"\ncoach_line = \"Long arms.\"\nhome = { kind = \"same\" }\n"
         "space_m2 = 2.0\nflags = [" +
         flags + "]\navoid_with = [" + avoid + "]\neffort = 3\n";
}

TEST(CatalogueLimits, AreMissedAtADrillAsAtAMovement) {
  const std::string press = test::movement_text("press");
  EXPECT_EQ(test::complaint(press + drill_text("\"wrist\"", "\"wrist\"")), "");
  EXPECT_THAT(test::complaint(press + drill_text("\"wrist\"", "")),
              HasSubstr("'lean': avoid_with: leaves out 'wrist', which the flags imply"));
}

}  // namespace
}  // namespace repwright::store
