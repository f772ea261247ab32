#include "app/load_steps.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped_catalogue.hpp"

namespace repwright::app {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

/// An invented shelf.
domain::Hall shelf() {
  domain::Hall hall;
  hall.unlimited = false;
  const auto add = [&](const char* kit, double kg, int count) {
    hall.kit.push_back(
        {.equipment = {kit}, .mass = kg * base::kilogram, .height = {}, .size = {}, .count = count});
  };
  add("kettlebell", 24, 1);
  add("kettlebell", 8, 4);
  add("kettlebell", 16, 2);
  add("kettlebell", 32, 0);
  add("plates", 1.25, 1);
  add("plates", 2.5, 4);
  add("plates", 20, 6);
  return hall;
}

domain::FittedItem line(const char* movement, double kg, int implements = 1) {
  domain::FittedItem item;
  item.movement = {movement};
  if (kg > 0) item.load = kg * base::kilogram;
  item.implements = implements;
  return item;
}

LoadSteps steps(const std::vector<domain::FittedItem>& lines) {
  return load_steps(lines, test::shipped_catalogue(), shelf());
}

TEST(LoadSteps, OfABellAreTheBellsThatThereAre) {
  EXPECT_THAT(steps({line("kb-swing", 16)}).lots, ElementsAre(8, 16, 24));
  EXPECT_FALSE(steps({line("kb-swing", 16)}).step);
}

TEST(LoadSteps, OfAPairOfBellsAreThoseOfWhichThereAreTwo) {
  EXPECT_THAT(steps({line("kb-swing", 16, 2)}).lots, ElementsAre(16, 32));
}

TEST(LoadSteps, OfABarAreTwiceTheSmallestPlateOfWhichThereAreTwo) {
  const LoadSteps bar = steps({line("push-up", 0), line("bb-back-squat", 80)});
  EXPECT_THAT(bar.lots, IsEmpty());
  EXPECT_EQ(bar.step, 5.0);
}

TEST(LoadSteps, AreNotKnownOfWhatTheHallDoesNotList) {
  EXPECT_EQ(steps({line("db-bench-press", 20)}), LoadSteps{});
  EXPECT_EQ(steps({}), LoadSteps{});
  EXPECT_EQ(load_steps({line("bb-back-squat", 80)}, test::shipped_catalogue(), {}), LoadSteps{});
}

}  // namespace
}  // namespace repwright::app
