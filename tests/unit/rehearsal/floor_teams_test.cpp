#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/world.hpp"

/// Partners and relays on the floor, each with times worked out by hand.
namespace repwright {
namespace {

using test::disappointments;
using ::testing::IsEmpty;

TEST(FloorTeams, HandAPoolOverAtEachBreak) {
  // Five each: ana 0:00-0:10, bo 0:13-0:23, ana 0:26-0:36, bo 0:39-0:49.
  EXPECT_THAT(disappointments(R"(
    class   ana bo
    team    ana bo
    pool    20 one works
    plan    pool 1 reps sets 5
    expect  ana reps 20
    expect  ana home 0:49
    expect  class ends 0:49
  )"),
              IsEmpty());
  EXPECT_THAT(disappointments(R"(
    class   ana bo
    team    ana bo
    hand    0:10
    pool    20 one works
    plan    pool 1 reps sets 5
    expect  class ends 1:10
  )"),
              IsEmpty());
}

TEST(FloorTeams, RunARelayWithAnOddNumberOfPeople) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo cy di ed
    team    ana bo
    team    cy di ed
    plan    take, 20 s, pass
    expect  di starts 0 at 0:23
    expect  ed starts 0 at 0:46
    expect  bo home 0:43
    expect  cy home 1:06
    expect  class ends 1:06
  )"),
              IsEmpty());
}

TEST(FloorTeams, GiveTheBatonToOneOnlyWhenItsHolderGoesHome) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo cy
    team    ana bo cy
    plan    2 x ( take, 20 s, pass )
    expect  bo starts 0 at 0:23
    expect  cy starts 0 at 0:46
    expect  ana starts 1 at 1:09
    expect  bo starts 1 at 1:32
    expect  cy starts 1 at 1:55
    expect  class ends 2:15
  )"),
              IsEmpty());
}

TEST(FloorTeams, GoOnWithoutAPartnerWhoIsLate) {
  // ana twice in a row, then bo, who has come meanwhile.
  EXPECT_THAT(disappointments(R"(
    class   ana bo@0:25
    team    ana bo
    plan    2 x ( take, 20 s, pass )
    expect  ana starts 1 at 0:20
    expect  bo starts 0 at 0:43
    expect  class ends 1:23
  )"),
              IsEmpty());
}

TEST(FloorTeams, LetALatePartnerTakeASharedCountUp) {
  // ana alone: 5 reps, break, 5 reps (0:23); bo comes at 0:20 and takes over at 0:26; ten are left.
  EXPECT_THAT(disappointments(R"(
    class   ana bo@0:20
    team    ana bo
    pool    20 one works
    plan    pool 1 reps sets 5
    expect  ana reps 20
    expect  class ends 0:49
  )"),
              IsEmpty());
}

}  // namespace
}  // namespace repwright
