#include "domain/spoken.hpp"

#include <gtest/gtest.h>

namespace repwright::domain {
namespace {

Movement named(std::string name, std::string spoken = "", std::string many = "") {
  Movement movement;
  movement.name = std::move(name);
  movement.spoken = std::move(spoken);
  movement.spoken_many = std::move(many);
  return movement;
}

TEST(Spoken, SaysANameAsACoachDoes) {
  EXPECT_EQ(spoken_one(named("Kettlebell swing to chest height", "kettlebell swing")), "kettlebell swing");
  EXPECT_EQ(spoken_many(named("Kettlebell swing to chest height", "kettlebell swing")), "kettlebell swings");
  EXPECT_EQ(spoken_many(named("Toes to bar", "toes-to-bar", "toes-to-bar")), "toes-to-bar");
}

TEST(Spoken, TakesTheNameWhereNothingElseIsSaid) {
  EXPECT_EQ(spoken_one(named("Goblet squat")), "goblet squat");
  EXPECT_EQ(spoken_many(named("Goblet squat")), "goblet squats");
}

TEST(Plural, IsMadeAtTheHeadOfTheName) {
  EXPECT_EQ(plural("push press"), "push presses");
  EXPECT_EQ(plural("farmer carry"), "farmer carries");
  EXPECT_EQ(plural("crunch"), "crunches");
  EXPECT_EQ(plural("burpee over the bar"), "burpees over the bar");
  EXPECT_EQ(plural("push-up, hands raised"), "push-ups, hands raised");
  EXPECT_EQ(plural("relay"), "relays");
  EXPECT_EQ(plural(""), "");
}

}  // namespace
}  // namespace repwright::domain
