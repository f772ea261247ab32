#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "support/shipped_catalogue.hpp"

/// Where a part of the class ends, and what its minutes hold for. All common practice, no source.
namespace repwright::board {
namespace {

nlohmann::json blocks_of(const std::string& text) {
  return api::blocks_json(read(text, test::shipped_catalogue(), {}).board);
}

TEST(PartBorders, AWarmUpWithMinutesIsNoPartOfTheClockDirectlyBelow) {
  const auto blocks = blocks_of("Warm-up 6 min\nAMRAP 8\n8 push-ups\n10 squats");
  ASSERT_EQ(blocks.size(), 2);
  EXPECT_EQ(blocks[0]["kind"], "note");
  EXPECT_EQ(blocks[0]["duration_s"], 360);
  EXPECT_EQ(blocks[1]["kind"], "amrap");
  EXPECT_EQ(blocks[1]["duration_s"], 480);
}

TEST(PartBorders, AClockOfTheSameMinutesIsTheWarmUp) {
  const auto blocks = blocks_of("Warm-up 8 min\nAMRAP 8\n8 push-ups\n10 squats");
  ASSERT_EQ(blocks.size(), 1);
  EXPECT_EQ(blocks[0]["kind"], "amrap");
  EXPECT_EQ(blocks[0]["title"], "Warm-up");
}

TEST(PartBorders, TurnsThatFitIntoTheWarmUpAreTheWarmUp) {
  const auto blocks = blocks_of("Warm-up 10 min\nEMOM 6: 5 push-ups");
  ASSERT_EQ(blocks.size(), 1);
  EXPECT_EQ(blocks[0]["kind"], "every");
  EXPECT_EQ(blocks[0]["duration_s"], 600);
}

TEST(PartBorders, AClockBelowABlankLineIsNoPartOfTheLiftingAbove) {
  const auto blocks = blocks_of("Strength 15 min\nBack squat 5x5\n\nAMRAP 12\n10 burpees\n200 m run");
  ASSERT_EQ(blocks.size(), 2);
  EXPECT_EQ(blocks[0]["kind"], "sets");
  EXPECT_EQ(blocks[0]["duration_s"], 900);
  EXPECT_EQ(blocks[1]["kind"], "amrap");
}

TEST(PartBorders, RoundsForTimeBelowABlankLineTakeNoMinutesOfTheLifting) {
  const auto blocks = blocks_of("Str 12'\nBench press 4x6\n\n3 RFT\n400 m run\n12 pull-ups");
  ASSERT_EQ(blocks.size(), 2);
  EXPECT_EQ(blocks[0]["duration_s"], 720);
  EXPECT_EQ(blocks[1]["kind"], "for_time");
  EXPECT_FALSE(blocks[1].contains("cap_s"));
}

TEST(PartBorders, LetteredPiecesStayUnderTheirHeading) {
  const auto blocks = blocks_of("Strength 20 min\nA. Back squat 5x5\n\nB. EMOM 6: 2 power cleans");
  ASSERT_EQ(blocks.size(), 1);
  EXPECT_EQ(blocks[0]["kind"], "part");
  EXPECT_EQ(blocks[0]["duration_s"], 1200);
}

TEST(PartBorders, AShorterClockKeepsItsMinutesWithinThoseOfTheHeading) {
  const auto blocks = blocks_of("Piece A 15 min\nAMRAP 10\n10 burpees\n200 m run");
  ASSERT_EQ(blocks.size(), 1);
  EXPECT_EQ(blocks[0]["kind"], "part");
  EXPECT_EQ(blocks[0]["duration_s"], 900);
  EXPECT_EQ(blocks[0]["children"][0]["duration_s"], 600);
}

TEST(PartBorders, MinutesBeforeWorkForDistanceAreAWindow) {
  const auto blocks = blocks_of("46-54 walk or jog for distance");
  ASSERT_EQ(blocks.size(), 1);
  EXPECT_EQ(blocks[0]["kind"], "window");
  EXPECT_EQ(blocks[0]["from_s"], 46 * 60);
  const auto& piece = blocks[0]["children"][0];
  EXPECT_EQ(piece["kind"], "for_distance");
  EXPECT_EQ(piece["duration_s"], 480);
  EXPECT_EQ(piece["items"][0]["qty"], "max");
  EXPECT_EQ(piece["items"][0]["unit"], "m");
  EXPECT_EQ(piece["items"][0]["scale"], nlohmann::json::array({"run"}));
}

TEST(PartBorders, AmountsWithoutMovementsKeepTheirOrderInWords) {
  const Reading reading = read("run 0,8 km - 24/40/96/48 any order", test::shipped_catalogue(), {});
  ASSERT_EQ(reading.board.blocks.size(), 1);
  EXPECT_EQ(reading.board.blocks[0].text, "24/40/96/48 any order");
  ASSERT_EQ(reading.diagnostics.size(), 1);
  EXPECT_EQ(reading.diagnostics[0].name, "numbers-without-movement");
}

}  // namespace
}  // namespace repwright::board
