#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/small_catalogue.hpp"

namespace repwright::store {
namespace {

using test::complaint;
using test::movement_text;
using testing::HasSubstr;

TEST(CatalogueErrors, AreNoneInTheSmallCatalogue) {
  EXPECT_EQ(complaint(movement_text("press")), "");
}

TEST(CatalogueErrors, NameFileLineIdFieldFoundAndExpected) {
  EXPECT_EQ(complaint(movement_text("press", {"break_s = -3"})),
            "bodyweight.toml:13: 'press': break_s: is -3, expected 0 to 600");
}

TEST(CatalogueErrors, AreAllNamedInOneGo) {
  const std::string said = complaint(movement_text("press", {"break_s = -3", "station = \"mine\""}) +
                                     movement_text("dip", {"name = -", "kit_free = \"yes\""}));
  EXPECT_THAT(said, HasSubstr("'press': break_s"));
  EXPECT_THAT(said, HasSubstr("'press': station: is 'mine', expected one of own, shared, lane"));
  EXPECT_THAT(said, HasSubstr("'dip': name: is missing"));
  EXPECT_THAT(said, HasSubstr("'dip': kit_free: is a text, expected true or false"));
}

TEST(CatalogueErrors, NameUnknownKeysWithTheNearestKnownOne) {
  EXPECT_THAT(complaint(movement_text("press", {"aliasses = []"})),
              HasSubstr("aliasses: is not a known key, nearest: aliases"));
  EXPECT_THAT(complaint(movement_text("press", {"favourite = 1"})),
              HasSubstr("favourite: is not a known key"));
}

TEST(CatalogueErrors, NameUnknownIdsWithTheNearestKnownOne) {
  EXPECT_THAT(complaint(movement_text("press", {"flags = [\"wirst\"]"})),
              HasSubstr("flags: no flag is called 'wirst', nearest: wrist"));
  EXPECT_THAT(complaint(movement_text("press", {"equipment = [\"bx\"]"})), HasSubstr("nearest: box"));
  EXPECT_THAT(complaint(movement_text("press", {"patterns = [\"shove\"]"})),
              HasSubstr("no pattern is called"));
  EXPECT_THAT(complaint(movement_text("press", {"muscles = { primary = [\"ches\"], secondary = [] }"})),
              HasSubstr("muscles.primary: no muscle is called 'ches', nearest: chest"));
  EXPECT_THAT(complaint(movement_text("press", {"easier = [\"pres\"]"})), HasSubstr("easier: no movement"));
  EXPECT_THAT(complaint(movement_text("press", {"harder = [\"pres\"]"})), HasSubstr("harder: no movement"));
  EXPECT_THAT(
      complaint(movement_text("press", {"home = [{ movement = \"bed\", factor = 1, basis = \"reps\" }]"})),
      HasSubstr("home: no movement is called 'bed'"));
  EXPECT_THAT(complaint(movement_text("press", {"avoid_with = [\"toe\"]", "swap_for = { toe = \"press\" }"})),
              HasSubstr("avoid_with: no limit is called 'toe'"));
  EXPECT_THAT(complaint(movement_text("press", {"category = \"bdyweight\""})),
              HasSubstr("nearest: bodyweight"));
}

TEST(CatalogueErrors, NameLaddersThatHoldFromOneEndOnly) {
  EXPECT_THAT(complaint(movement_text("press", {"easier = [\"lean\"]"}) + movement_text("lean")),
              HasSubstr("easier: names 'lean', whose 'harder' does not name 'press'"));
}

TEST(CatalogueErrors, NameLaddersThatGoInACircle) {
  EXPECT_THAT(complaint(movement_text("press", {"easier = [\"lean\"]", "harder = [\"lean\"]"}) +
                        movement_text("lean", {"easier = [\"press\"]", "harder = [\"press\"]"})),
              HasSubstr("goes in a circle"));
  EXPECT_THAT(complaint(movement_text("press", {"easier = [\"press\"]"})),
              HasSubstr("names the movement itself"));
}

TEST(CatalogueErrors, NameDoubleIdsAndAliases) {
  EXPECT_THAT(complaint(movement_text("press") + movement_text("press", {"name = \"Other\""})),
              HasSubstr("bodyweight.toml:29: 'press': id: stands already at bodyweight.toml:1"));
  EXPECT_THAT(complaint(movement_text("press", {"aliases = [\"push\"]"}) +
                        movement_text("lean", {"aliases = [\"Pushes\"]"})),
              HasSubstr("'lean': aliases: 'Pushes' belongs to 'press' already"));
  EXPECT_THAT(complaint(movement_text("press", {"aliases = [\"push\", \"push\"]"})),
              HasSubstr("names 'push' twice"));
  EXPECT_THAT(
      complaint("[ambiguous]\npush = [\"press\"]\n" + movement_text("press", {"aliases = [\"push\"]"})),
      HasSubstr("ambiguous.push: is an alias of 'press' already"));
}

TEST(CatalogueErrors, NamePacesThatCannotBe) {
  const auto pace = [](const char* text) {
    return complaint(movement_text("press", {std::string("seconds_per_unit = ") + text}));
  };
  EXPECT_THAT(pace("{ reps = { brisk = -1, sustained = 2 } }"),
              HasSubstr("seconds_per_unit.reps.brisk: is -1"));
  EXPECT_THAT(pace("{ reps = { brisk = 1 } }"), HasSubstr("seconds_per_unit.reps.sustained: is missing"));
  EXPECT_THAT(pace("{ reps = { brisk = 3, sustained = 2 } }"), HasSubstr("is slower than 'sustained'"));
  EXPECT_THAT(pace("{ m = { brisk = 1, sustained = 2 } }"),
              HasSubstr("default_unit: is 'reps', which has no entry under seconds_per_unit"));
  EXPECT_THAT(pace("{ rep = { brisk = 1, sustained = 2 } }"), HasSubstr("not a known key, nearest: reps"));
  EXPECT_THAT(pace("{ reps = { brisk = nan, sustained = 2 } }"), HasSubstr("brisk: is nan"));
}

TEST(CatalogueErrors, NameLimitsWithoutASafeSwap) {
  EXPECT_THAT(complaint(movement_text("press", {"flags = [\"wrist\"]"})),
              HasSubstr("avoid_with: leaves out 'wrist', which the flags imply"));
  EXPECT_THAT(complaint(movement_text("press", {"impact = \"high\""})), HasSubstr("leaves out 'wrist'"));
  EXPECT_THAT(complaint(movement_text("press", {"avoid_with = [\"wrist\"]"})),
              HasSubstr("swap_for: names no swap for 'wrist'"));
  EXPECT_THAT(complaint(movement_text("press", {"swap_for = { wrist = \"lean\" }"}) + movement_text("lean")),
              HasSubstr("swap_for.wrist: is not a limit of avoid_with"));
  const std::string carries =
      movement_text("lean", {"avoid_with = [\"wrist\"]", "swap_for = { wrist = \"stand\" }"}) +
      movement_text("stand");
  EXPECT_THAT(
      complaint(movement_text("press", {"avoid_with = [\"wrist\"]", "swap_for = { wrist = \"lean\" }"}) +
                carries),
      HasSubstr("'press': swap_for.wrist: 'lean' carries that limit itself"));
}

TEST(CatalogueErrors, NameMissingStandardsCuesAndCautions) {
  EXPECT_THAT(complaint(movement_text("press", {"standard = -"})), HasSubstr("standard: is missing"));
  EXPECT_THAT(complaint(movement_text("press", {"standard = { start = \"Tall.\", finish = \"\" }"})),
              HasSubstr("standard.finish: is empty"));
  EXPECT_THAT(complaint(movement_text("press", {"faults = []"})), HasSubstr("faults: has no pair"));
  EXPECT_THAT(complaint(movement_text("press", {"faults = [{ fault = \"Slow\" }]"})),
              HasSubstr("faults[1].cue: is missing"));
  EXPECT_THAT(complaint(movement_text("press", {"cautions = []"})), HasSubstr("cautions: has no caution"));
}

TEST(CatalogueErrors, NameTheLineAndColumnOfWhatIsNotToml) {
  EXPECT_THAT(complaint("version = 1\n[[movement]]\nid = \"press\nname = 1\n"),
              HasSubstr("bodyweight.toml:3: column "));
  EXPECT_THAT(complaint("movement = 3\n"), HasSubstr("write [[movement]] above each"));
  EXPECT_THAT(complaint("version = 9\n"), HasSubstr("version: is 9, this program reads 1"));
}

TEST(GymsOwnMovements, ReplaceTheShippedRowAndPutTheLaddersRight) {
  const std::string shipped = movement_text("press", {"easier = [\"lean\"]", "aliases = [\"push\"]"}) +
                              movement_text("lean", {"harder = [\"press\"]", "aliases = [\"tilt\"]"});
  const std::string own = movement_text("press", {"break_s = 20", "aliases = [\"tilts\", \"big push\"]"}) +
                          movement_text("stomp", {"easier = [\"lean\"]"}) +
                          "[ambiguous]\nbig = [\"press\", \"stomp\"]\n";
  const auto read = test::read_small(shipped, own);
  ASSERT_TRUE(read.has_value()) << read.error().message;
  ASSERT_EQ(read->movements.size(), 3U);
  const domain::Movement* press = read->find(domain::MovementId{"press"});
  EXPECT_EQ(press->break_rest, 20 * base::second);
  EXPECT_EQ(press->source, "the gym's own");
  const domain::Movement* lean = read->find(domain::MovementId{"lean"});
  EXPECT_EQ(lean->harder, std::vector<domain::MovementId>{{"stomp"}});
  EXPECT_TRUE(lean->aliases.empty());
  EXPECT_EQ(read->ambiguous_words.at("big").size(), 2U);
}

TEST(GymsOwnMovements, AreCheckedLikeTheShippedRows) {
  EXPECT_THAT(complaint(movement_text("press"), movement_text("stomp", {"easier = [\"prss\"]"})),
              HasSubstr("movements.toml:17: 'stomp': easier: no movement is called 'prss', nearest: press"));
}

}  // namespace
}  // namespace repwright::store
