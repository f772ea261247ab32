#include "domain/movement_names.hpp"

#include <gtest/gtest.h>

#include <array>

namespace repwright::domain {
namespace {

Catalogue small_catalogue() {
  Catalogue catalogue;
  const auto add = [&](const char* id, const char* name, std::vector<std::string> aliases) {
    Movement movement;
    movement.id = {id};
    movement.name = name;
    movement.aliases = std::move(aliases);
    catalogue.movements.push_back(std::move(movement));
  };
  add("bb-deadlift", "Barbell deadlift", {"dead lift"});
  add("mb-wall-shot", "Medicine ball squat and throw to a target", {"wall ball", "wall shot"});
  add("push-up", "Push-up", {"press up", "pushups"});
  catalogue.ambiguous_words["deadlift"] = {{"bb-deadlift"}};
  return catalogue;
}

TEST(NormalName, IgnoresCaseHyphensBlanksApostrophesAndPlurals) {
  EXPECT_EQ(normal_name("Push-Ups"), "push up");
  EXPECT_EQ(normal_name("  push \u2013 up "), "push up");
  EXPECT_EQ(normal_name("Farmer\u2019s Carry"), "farmer carry");
  EXPECT_EQ(normal_name("push presses"), "push press");
  EXPECT_EQ(normal_name("bench press"), "bench press");
  EXPECT_EQ(normal_name("KBs"), "kbs");
  EXPECT_EQ(normal_name(""), "");
}

TEST(EditDistance, CountsASwapOfNeighboursOnce) {
  EXPECT_EQ(edit_distance("burpee", "burpee"), 0U);
  EXPECT_EQ(edit_distance("bupree", "burpee"), 1U);
  EXPECT_EQ(edit_distance("", "row"), 3U);
  EXPECT_EQ(edit_distance("sqaut", "squats"), 2U);
}

TEST(NearestName, IsSilentWhenNothingIsNear) {
  const std::array<std::string_view, 3> names{"alias", "aliases", "flags"};
  EXPECT_EQ(nearest_name("aliasses", names), "aliases");
  EXPECT_EQ(nearest_name("flgas", names), "flags");
  EXPECT_EQ(nearest_name("harder", names), "");
}

TEST(MovementNames, FindsAMovementByIdNameOrAliasInAnySpelling) {
  const Catalogue catalogue = small_catalogue();
  const MovementNames names(catalogue);
  for (const char* written : {"push-up", "PUSH UPS", "pushup", "Press-Ups", "push\u2011ups"}) {
    ASSERT_NE(names.find(written), nullptr) << written;
    EXPECT_EQ(names.find(written)->text, "push-up") << written;
  }
  EXPECT_EQ(names.find("Wall Balls")->text, "mb-wall-shot");
  EXPECT_EQ(names.find("pull-up"), nullptr);
}

TEST(MovementNames, DoesNotSqueezeAnAliasIntoAWordThatStandsForSeveral) {
  const Catalogue catalogue = small_catalogue();
  const MovementNames names(catalogue);
  EXPECT_EQ(names.find("deadlift"), nullptr);
  EXPECT_EQ(names.find("dead lift")->text, "bb-deadlift");
}

}  // namespace
}  // namespace repwright::domain
