#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/world.hpp"

namespace repwright {
namespace {

using test::disappointments;
using ::testing::IsEmpty;

TEST(Floor, LetsEverybodyWorkAtOnceOnTheirOwnSpots) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo cy
    plan    20 s, rest 0:10, 5 reps
    expect  ana home 0:40
    expect  cy home 0:40
    expect  ana reps 5
    expect  class ends 0:40
  )"),
              IsEmpty());
}

TEST(Floor, ServesAQueueInTheOrderOfComing) {
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo cy
    plan    2 x ( 10 s bars, 20 s )
    expect  ana starts 0 at 0:00
    expect  bo waits 0:10
    expect  cy waits 0:20
    expect  ana home 1:00
    expect  bo home 1:10
    expect  cy home 1:20
    expect  queue bars 2
  )"),
              IsEmpty());
}

TEST(Floor, FreesAPlaceBeforeItIsClaimedAtTheSameInstant) {
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo
    stagger 0:10
    plan    10 s bars
    expect  bo waits 0:00
    expect  bo home 0:10
    expect  queue bars 0
  )"),
              IsEmpty());
}

TEST(Floor, KeepsThePlaceWhileRestingUnlessTheHouseSaysOtherwise) {
  // Two sets of 10 pulls: the break holds bo up, or lets bo work.
  const char* kept = R"(
    floor   bars=1
    class   ana bo
    plan    20 pulls bars
    expect  bo starts 0 at 0:00
  )";
  EXPECT_THAT(disappointments(kept), IsEmpty());
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo
    plan    4 pulls bars, 4 pulls bars, 20 s
    expect  queue bars 1
    expect  ana waits 0
  )"),
              IsEmpty())
      << "who goes on at the same place does not queue for it again";
}

TEST(Floor, StopsAtTheBellAndCountsWhatWasDoneBefore) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    length  0:21
    plan    by 0:21 END, AGAIN:, 5 reps, round, goto AGAIN, END:, home
    expect  ana home 0:21
    expect  ana reps 10
    expect  ana rounds 2
    expect  class ends 0:21
  )"),
              IsEmpty());
}

TEST(Floor, CountsARepThatEndsWithTheBell) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    by 0:20 END, max reps, END:, home
    expect  ana reps 10
    expect  ana home 0:20
  )"),
              IsEmpty());
}

TEST(Floor, CallsWhoeverQueuesAwayAtTheBell) {
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo
    plan    by 0:15 END, 20 s bars, END:, home
    expect  bo waits 0:15
    expect  bo home 0:15
    expect  bo capped
    expect  class ends 0:15
  )"),
              IsEmpty());
}

TEST(Floor, CarriesOverWhatTheBellCut) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    by 0:11 R1, AGAIN:, 10 reps, round, goto AGAIN
    plan    R1:, until 0:20, by 0:33 END, resume, END:, home
    expect  ana reps 11
    expect  ana rounds 1
  )"),
              IsEmpty());
}

TEST(Floor, StartsEachSlotOnTheClockAndSkipsWhatWasMissed) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    mark, by 0:20 A, 8 reps, A:, lap, until 0:20
    plan    mark, by 0:40 B, 12 reps, B:, lap, until 0:40
    plan    mark, by 1:00 C, 5 reps, C:, lap, until 1:00
    expect  ana reps 23
    expect  ana laps 3
    expect  ana full laps 2
    expect  ana starts 2 at 0:40
    expect  ana home 1:00
  )"),
              IsEmpty());
}

TEST(Floor, LetsALateComerJoinWhereTheClockIs) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo@0:25
    plan    by 0:20 A, 5 reps, A:, until 0:20, by 0:40 B, 5 reps, B:, until 0:40
    expect  ana reps 10
    expect  bo reps 5
    expect  bo starts 0 at 0:25
    expect  bo home 0:40
  )"),
              IsEmpty());
  EXPECT_THAT(disappointments(R"(
    class   ana bo@1:00
    plan    10 s
    expect  bo absent
    expect  class ends 0:10
  )"),
              IsEmpty())
      << "who comes when all are home has missed the piece";
}

TEST(Floor, PlaysHeatsOneAfterTheOther) {
  EXPECT_THAT(disappointments(R"(
    floor   bars=2
    class   ana bo cy di
    heats   ana bo / cy di
    plan    30 s bars
    expect  ana home 0:30
    expect  cy home 0:30
    expect  cy waits 0
    expect  class ends 1:00
  )"),
              IsEmpty());
}

TEST(Floor, StaggersStartsAndTimesEachFromTheirOwn) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo cy
    stagger 0:15
    plan    40 s
    expect  cy home 0:40
    expect  class ends 1:10
  )"),
              IsEmpty());
}

TEST(Floor, RestsAsLongAsTheWorkTook) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    mark, 15 s, lap, rest x 2, 10 s
    expect  ana home 0:55
  )"),
              IsEmpty());
}

TEST(Floor, PlaysADutyInsideTheWork) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    duty    0:10 every 1:00 from 1:00
    plan    100 s
    expect  ana home 1:50
  )"),
              IsEmpty());
  EXPECT_THAT(disappointments(R"(
    class   ana
    duty    0:10 every 1:00 from 0:30
    plan    10 s, rest 0:40, 10 s
    expect  ana starts 1 at 0:30
    expect  ana home 1:10
  )"),
              IsEmpty())
      << "a rest goes on where the duty broke it off";
}

TEST(Floor, HandsABatonOn) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo
    team    ana bo
    plan    take, 20 s, pass, take, 10 s, pass
    expect  bo starts 0 at 0:23
    expect  ana starts 1 at 0:46
    expect  class ends 1:09
  )"),
              IsEmpty());
}

TEST(Floor, PassesOverWhoHasGoneHome) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo
    team    ana bo
    plan    take, 20 s, pass
    expect  class ends 0:43
  )"),
              IsEmpty());
}

TEST(Floor, LetsATeamMeetBeforeItGoesOn) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo cy
    team    ana bo
    stagger 0:10
    plan    20 s, meet, 10 s
    expect  class ends 0:50
    expect  ana starts 1 at 0:30
    expect  bo starts 1 at 0:20
    expect  cy starts 1 at 0:20
  )"),
              IsEmpty());
}

TEST(Floor, MeetsTheWholeHeat) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo cy
    stagger 0:10
    plan    20 s, meet all, 10 s
    expect  ana starts 1 at 0:40
    expect  cy starts 1 at 0:20
  )"),
              IsEmpty());
}

TEST(Floor, DrawsFromATeamsPoolTogether) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo
    team    ana bo
    pool    30
    plan    pool 1 reps
    expect  ana reps 30
    expect  bo reps 30
  )"),
              IsEmpty());
}

TEST(Floor, LetsOneWorkOnAPoolWhileTheOtherRests) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo
    team    ana bo
    pool    20 one works
    plan    pool 1 pulls, meet
    expect  ana reps 20
  )"),
              IsEmpty());
}

TEST(Floor, TakesOutWhoCanNeverFinish) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    30000 s
    expect  ana home 240:00
    expect  ana capped
  )"),
              IsEmpty());
}

}  // namespace
}  // namespace repwright
