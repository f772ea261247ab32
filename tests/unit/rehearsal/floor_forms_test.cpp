#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/world.hpp"

/// The forms of the trade on the floor, each with times worked out by hand.
namespace repwright {
namespace {

using test::disappointments;
using ::testing::IsEmpty;

TEST(FloorPlaces, AreKeptOverBreaksByTheUsualHouse) {
  // ana 0:00-0:10, break, 0:13-0:23; only then bo.
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo
    plan    10 reps bars sets 5
    expect  ana home 0:23
    expect  bo waits 0:23
    expect  bo home 0:46
  )"),
              IsEmpty());
}

TEST(FloorPlaces, AreGivenUpAtEachBreakWhereTheHouseSaysSo) {
  // ana 0:00-0:10, back at 0:13, waits for bo (0:10-0:20), 0:20-0:30; bo is back at 0:23, 0:30-0:40.
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    house   give up the place
    class   ana bo
    plan    10 reps bars sets 5
    expect  ana waits 0:07
    expect  ana home 0:30
    expect  bo waits 0:17
    expect  bo home 0:40
  )"),
              IsEmpty());
}

TEST(FloorPlaces, OfferASecondStationToWhoeverFindsTheirOwnTaken) {
  EXPECT_THAT(disappointments(R"(
    floor   bars=1 rings=1
    class   ana bo cy
    plan    20 s bars else rings
    expect  bo waits 0
    expect  cy waits 0:20
    expect  cy home 0:40
    expect  queue rings 0
  )"),
              IsEmpty())
      << "with both taken people wait for their own";
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo cy
    plan    2 x ( 20 s bars else spot )
    expect  cy waits 0
    expect  cy home 0:40
  )"),
              IsEmpty());
}

TEST(FloorPenalty, IsPaidAtEachBreakBeforeTheNextSet) {
  // 0:00-0:10, price till 0:15, breath till 0:18, 0:18-0:28, again, 0:36-0:46.
  EXPECT_THAT(disappointments(R"(
    class   ana
    penalty 0:05
    plan    15 reps sets 5
    expect  ana home 0:46
    expect  ana reps 15
  )"),
              IsEmpty());
}

TEST(FloorPenalty, IsNotOwedByWhoeverDoesNotBreak) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    penalty 0:05
    plan    15 reps, 5 reps
    expect  ana home 0:40
  )"),
              IsEmpty());
}

TEST(FloorPenalty, GivesThePlaceAway) {
  // ana 0:00-0:10, price and breath till 0:18, waits for bo till 0:20, 0:20-0:30; bo is back at 0:28.
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo
    penalty 0:05
    plan    10 reps bars sets 5
    expect  ana waits 0:02
    expect  ana home 0:30
    expect  bo waits 0:12
    expect  bo home 0:40
  )"),
              IsEmpty());
}

TEST(FloorPenalty, EndsWithTheBell) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    penalty 0:05
    plan    by 0:12 END, 10 reps sets 5, END:, home
    expect  ana reps 5
    expect  ana home 0:12
    expect  ana capped
  )"),
              IsEmpty());
}

TEST(FloorDuty, CallsEverybodyOffThePlacesOnTheMinute) {
  // At 0:30 both do their ten seconds. ana is back first: 0:40-1:10. bo 1:10-1:30, duty, 1:40-2:20.
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo
    duty    0:10 every 1:00 from 0:30
    plan    60 s bars
    expect  ana home 1:10
    expect  bo waits 1:00
    expect  bo home 2:20
  )"),
              IsEmpty());
}

TEST(FloorDuty, ThatTakesLongerThanItsTurnLeavesNoTimeToQueue) {
  // ana is back at 1:10, after the call of 1:00: she does the next one at once, though di has the bar then.
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo cy di
    stagger 0:15
    duty    0:40 every 0:30 from 0:30
    plan    by 4:00 END, 60 s bars, END:, home
    expect  ana waits 0
    expect  ana home 4:00
    expect  bo waits 0:15
  )"),
              IsEmpty());
}

TEST(FloorDuty, AsOftenAsPossibleStandsForTheCallsThatComeMeanwhile) {
  // Called at 0:05, ten reps to 0:25; the calls of 0:15 and 0:25 are missed, and 3 s were left.
  EXPECT_THAT(disappointments(R"(
    class   ana
    duty    best pulls every 0:10 from 0:05
    plan    8 s
    expect  ana home 0:28
  )"),
              IsEmpty());
}

TEST(FloorBestSet, IsOneSetToFailure) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    best pulls, round
    expect  ana reps 10
    expect  ana home 0:20
    expect  ana rounds 1
  )"),
              IsEmpty());
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    best-2 pulls
    expect  ana reps 8
    expect  ana home 0:16
  )"),
              IsEmpty());
}

TEST(FloorBestSet, EndsWithTheBell) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    by 0:11 END, best pulls, END:, home
    expect  ana reps 5
    expect  ana home 0:11
    expect  ana capped
  )"),
              IsEmpty());
}

TEST(FloorBestSet, OfWhatSomebodyCannotDoIsNone) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    best never, 10 s
    expect  ana reps 0
    expect  ana home 0:10
  )"),
              IsEmpty());
}

TEST(FloorBestSet, OfTwoPeopleOnOneBarFollowsTheOther) {
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo
    plan    best pulls bars
    expect  bo waits 0:20
    expect  bo reps 10
    expect  bo home 0:40
  )"),
              IsEmpty());
}

TEST(FloorRuns, PassTheDoorTwice) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    door    0:08
    plan    40 m, 10 s
    expect  ana starts 1 at 0:26
    expect  ana home 0:36
  )"),
              IsEmpty());
}

TEST(FloorRuns, TurnOncePerLengthOfAShuttle) {
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    40 shuttle
    expect  ana home 0:14
    expect  ana metres 40
  )"),
              IsEmpty())
      << "ten seconds of running and four turns";
  EXPECT_THAT(disappointments(R"(
    class   ana
    plan    by 0:07 END, 40 shuttle, END:, home
    expect  ana metres 20
    expect  ana home 0:07
  )"),
              IsEmpty());
}

TEST(FloorRuns, GoByTheRouteInTheOrderOfTheStartWhereItTakesOnlyTwo) {
  // Out 0:08, run 0:10, in 0:08; the lane is taken from the door to the door.
  EXPECT_THAT(disappointments(R"(
    floor   lane=2
    class   ana bo cy
    door    0:08
    plan    40 m lane
    expect  ana home 0:26
    expect  bo home 0:26
    expect  cy waits 0:18
    expect  cy home 0:44
  )"),
              IsEmpty());
}

TEST(FloorLate, JoinsWithWhatIsLeft) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo@0:25
    plan    by 1:00 END, AGAIN:, 5 reps, round, goto AGAIN, END:, home
    expect  ana rounds 6
    expect  bo reps 17
    expect  bo rounds 3
    expect  bo home 1:00
  )"),
              IsEmpty());
}

TEST(FloorLate, IsNotWaitedFor) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo cy@0:25
    stagger 0:05
    plan    20 s, meet all, 10 s
    expect  ana starts 1 at 0:25
    expect  bo starts 1 at 0:20
    expect  cy starts 1 at 0:35
  )"),
              IsEmpty())
      << "who joins later meets those who are still there";
}

TEST(FloorHeats, OfUnevenNumbersFollowAfterTheChange) {
  // The first heat needs two turns on two bars: till 1:00. A quarter past one of a change, then di alone.
  EXPECT_THAT(disappointments(R"(
    floor   bars=2
    class   ana bo cy di
    heats   ana bo cy / di
    change  1:15
    plan    30 s bars
    expect  cy waits 0:30
    expect  di waits 0
    expect  di home 0:30
    expect  class ends 2:45
  )"),
              IsEmpty());
}

TEST(FloorHeats, OfAFixedLengthStartByTheClock) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo
    heats   ana / bo
    change  1:15
    length  2:00
    plan    20 s
    expect  class ends 5:15
  )"),
              IsEmpty());
}

TEST(FloorStarts, FlowAsAWaterfallThroughTheStations) {
  // One every ten seconds onto one bar for ten: nobody waits. For fifteen: each waits five more than the
  // last.
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo cy
    stagger 0:10
    plan    10 s bars, 20 s
    expect  cy waits 0
    expect  class ends 0:50
  )"),
              IsEmpty());
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo cy
    stagger 0:10
    plan    15 s bars, 20 s
    expect  bo waits 0:05
    expect  cy waits 0:10
    expect  cy home 0:45
    expect  class ends 1:05
  )"),
              IsEmpty());
}

TEST(FloorStarts, LeaveALateComerTheOwnStartSignal) {
  // bo's signal is at 0:15, but bo comes at 0:25: ten seconds are gone from the clock of bo.
  EXPECT_THAT(disappointments(R"(
    class   ana bo@0:25
    stagger 0:15
    plan    40 s
    expect  bo starts 0 at 0:10
    expect  bo home 0:50
    expect  class ends 1:05
  )"),
              IsEmpty());
}

TEST(FloorRests, AreTakenTogetherByTheWholeHeat) {
  EXPECT_THAT(disappointments(R"(
    class   ana bo
    stagger 0:10
    plan    20 s, meet all, rest 0:20, 10 s
    expect  ana starts 1 at 0:50
    expect  bo starts 1 at 0:40
    expect  class ends 1:00
  )"),
              IsEmpty());
}

TEST(FloorRests, ByTheClockBringTheGroupBackTogether) {
  EXPECT_THAT(disappointments(R"(
    floor   bars=1
    class   ana bo
    plan    10 s bars, until 1:00, 10 s
    expect  bo waits 0:10
    expect  ana starts 1 at 1:00
    expect  bo starts 1 at 1:00
    expect  class ends 1:10
  )"),
              IsEmpty());
}

}  // namespace
}  // namespace repwright
