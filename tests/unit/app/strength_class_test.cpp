#include <gtest/gtest.h>

#include <string>

#include "support/demo_gym.hpp"

/// A class that lifts: what each takes is theirs, so that the hour is one of sets and rests.
namespace repwright::app {
namespace {

domain::ClassOutcome hour_of(const std::string& chalk) {
  const OpenGym& gym = *test::demo_gym();
  const board::Reading reading = board::read(chalk, gym.knowledge.catalogue, gym.knowledge.house);
  WhatIf what;
  what.class_id = "sat-24";
  what.runs = 60;
  const auto rehearsed = rehearse_class(request_of(gym, reading, gym.classes.at("sat-24"), what));
  EXPECT_TRUE(rehearsed) << rehearsed.error().message;
  return rehearsed ? rehearsed->rehearsal.timetable : domain::ClassOutcome{};
}

/// Sets of one to five with at most two minutes of rest take minutes, not hours (common practice, no source).
TEST(StrengthClass, LastsAsLongAsItsSetsWhateverEachCanLift) {
  for (const std::string chalk : {"Deadlift 1x5 @ 75%, 1x3 @ 85%, 1x1 @ 95%\n", "back squat 5x5 @ 80 %\n",
                                  "build to a heavy 3 front squat (15 min)\nthen\n3x3 @ 85% of today\n",
                                  "Strength\n5 x 3 bench press @ 8 RPE, rest 2 min\n"}) {
    const domain::ClassOutcome hour = hour_of(chalk);
    EXPECT_LT(hour.p90_s, 45 * 60) << chalk;
    EXPECT_LT(hour.p90_s - hour.p50_s, 5 * 60) << chalk;
    EXPECT_EQ(hour.over_share, 0) << chalk;
  }
}

}  // namespace
}  // namespace repwright::app
