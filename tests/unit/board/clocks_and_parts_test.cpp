#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "board/tidy.hpp"
#include "support/shipped_catalogue.hpp"

/// Clocks in a row, starts by the clock, parts of partners, lifts by a bare name. All common practice, no
/// source.
namespace repwright::board {
namespace {

using nlohmann::json;

Reading reading_of(const std::string& text) {
  return read(text, test::shipped_catalogue(), {});
}
json blocks_of(const std::string& text) {
  return api::blocks_json(reading_of(text).board);
}
bool remarks(const std::string& text, const std::string& name) {
  const auto all = reading_of(text).diagnostics;
  return std::ranges::any_of(all, [&](const auto& each) { return each.name == name; });
}

TEST(Starts, AreWindowsUpToTheNext) {
  const json blocks = blocks_of("0:00 50 wall balls 9/6\n5:00 30 cal row\n12:00 800 m run\n20:00 done");
  ASSERT_EQ(blocks.size(), 3);
  EXPECT_EQ(blocks[1]["kind"], "window");
  EXPECT_EQ(blocks[1]["from_s"], 300);
  EXPECT_EQ(blocks[1]["to_s"], 720);
  EXPECT_EQ(blocks[1]["children"][0]["items"][0]["qty"], 30);
  EXPECT_EQ(blocks[1]["children"][0]["cap_s"], 420);
  EXPECT_EQ(blocks[2]["to_s"], 1200);
}

TEST(Starts, WithoutAnEndLastAsLongAsTheOneBefore) {
  const std::string text = "0:00 50 wall balls 9/6\n4:00 30 cal row";
  EXPECT_EQ(blocks_of(text)[1]["to_s"], 480);
  EXPECT_TRUE(remarks(text, "no-length"));
}

TEST(Starts, AreNotWhatRisingAmountsAre) {
  const json blocks = blocks_of("for time\n1:00 plank\n2:00 row");
  ASSERT_EQ(blocks.size(), 1);
  EXPECT_EQ(blocks[0]["items"].size(), 2);
}

TEST(ClocksInARow, StandOverTheSameWork) {
  for (const std::string text :
       {"AMRAP 6 / rest 2 / AMRAP 6\n5 burpees\n7 swings", "AMRAP 6\nrest 2\nAMRAP 6\n5 burpees\n7 swings"}) {
    const json blocks = blocks_of(text);
    ASSERT_EQ(blocks.size(), 3) << text;
    EXPECT_EQ(blocks[0]["items"], blocks[2]["items"]);
    EXPECT_EQ(blocks[0]["items"].size(), 2);
    EXPECT_EQ(blocks[1]["duration_s"], 120);
    EXPECT_TRUE(remarks(text, "work-of-next"));
    EXPECT_FALSE(remarks(text, "no-work"));
  }
}

TEST(ClocksInARow, TakeTheLinesOfTheirNumber) {
  const std::string text = "AMRAP 6 / rest 2 / AMRAP 6\n1: 10 burpees 10 swings\n2: 10 squats 10 push-ups";
  const json blocks = blocks_of(text);
  ASSERT_EQ(blocks.size(), 3);
  EXPECT_EQ(blocks[0]["items"][0]["move"], "burpee");
  EXPECT_EQ(blocks[2]["items"][0]["move"], "air-squat");
  EXPECT_FALSE(remarks(text, "work-of-next"));
}

TEST(Partners, SwapTheirPartsWhenAllAreDone) {
  const json block = blocks_of("in pairs, AMRAP 12\nP1: 10 cal row\nP2: 12 burpees\nswap")[0];
  EXPECT_EQ(block["work_mode"], "swap-parts");
  EXPECT_EQ(block["duration_s"], 720);
  ASSERT_EQ(block["items"].size(), 2);
  EXPECT_EQ(block["items"][1]["move"], "burpee");
}

TEST(Partners, MayHaveSeveralThingsInAPart) {
  const json block = blocks_of("pairs, 12 min\nP1: 10 cal row + 5 burpees\nP2: 20 sit-ups\nswap")[0];
  ASSERT_EQ(block["children"].size(), 2);
  EXPECT_EQ(block["children"][0]["items"].size(), 2);
  EXPECT_EQ(block["children"][1]["kind"], "once");
}

TEST(Partners, WorkForAsLongAsTheOthersPartTakes) {
  const json block = blocks_of("pairs, 20 min cap\nA: 30 cal bike\nB: max wall balls 9/6\nswitch")[0];
  EXPECT_EQ(block["work_mode"], "alternate-by-piece");
  ASSERT_EQ(block["items"].size(), 1);
  EXPECT_EQ(block["items"][0]["gate"]["move"], "mb-wall-shot");
}

TEST(Partners, AreTwoWhereOneIsNumbered) {
  const json blocks = blocks_of("partner 1: 200 m run\npartner 2: AMRAP 5 burpees\nswap when back\n12 min");
  ASSERT_EQ(blocks.size(), 1);
  EXPECT_EQ(blocks[0]["team_size"], 2);
  EXPECT_EQ(blocks[0]["duration_s"], 720);
  EXPECT_EQ(blocks[0]["items"][0]["gate"]["move"], "burpee");
}

TEST(Partners, LetterOfAPieceIsNoPartner) {
  const json blocks = blocks_of("A: AMRAP 8 in pairs\n10 burpees\n\nB: AMRAP 6\n10 swings");
  ASSERT_EQ(blocks.size(), 2);
  EXPECT_EQ(blocks[1]["kind"], "amrap");
}

TEST(Heats, OfTwoAreTwo) {
  const std::string text = "heats of two\n3 rounds for time\n300 m row";
  EXPECT_EQ(blocks_of(text)[0]["heats"], 2);
  EXPECT_TRUE(remarks(text, "heats-of"));
  EXPECT_EQ(blocks_of("two heats\n3 rounds for time\n300 m row")[0]["heats"], 2);
}

TEST(Heats, OfManyPeopleSayNotHowMany) {
  const std::string text = "heats of 6\n3 rounds for time\n300 m row";
  EXPECT_FALSE(blocks_of(text)[0].contains("heats"));
  EXPECT_TRUE(remarks(text, "heats-of"));
}

TEST(Squats, AreLiftedInSetsOfFew) {
  for (const std::string text :
       {"squat 5-5-5", "squat 5x5 @ 80 %", "squat\n5 @ 70%\n3 @ 80%", "A) Squat 5-5-5-5-5",
        "build to a heavy 3 squat in 15 min", "5 RFT: 12 squats @60/40 kg, 200 m run"}) {
    const json blocks = blocks_of(text);
    EXPECT_EQ(blocks[0]["items"][0]["move"], "bb-back-squat") << text;
    EXPECT_TRUE(remarks(text, "ambiguous-movement")) << text;
  }
}

TEST(Squats, AreDoneWithoutABarInManyAndBesideOtherWork) {
  for (const std::string text :
       {"squats 3x20", "3 sets:\n8 squats\n8 push-ups", "AMRAP 10\n5 squats\n5 burpees", "air squats 5x5"})
    EXPECT_EQ(blocks_of(text)[0]["items"][0]["move"], "air-squat") << text;
}

TEST(HollowRocks, AreCountedAndHoldsAreHeld) {
  const json items = blocks_of("3 rft\n20 hollow rocks\n20 s hollow hold")[0]["items"];
  EXPECT_EQ(items[0]["unit"], "reps");
  EXPECT_EQ(items[0]["move"], "hollow-rock");
  EXPECT_EQ(items[1]["move"], "hollow-hold");
}

TEST(DottedCounts, AreAListAndNeitherDateNorLoad) {
  EXPECT_EQ(blocks_of("12.10.8.6\nDB bench 2x20/12\nring rows")[0]["items"][1]["qty"], json({12, 10, 8, 6}));
  EXPECT_EQ(blocks_of("21.15.9\nburpees")[0]["items"][0]["qty"], json({21, 15, 9}));
  EXPECT_EQ(reading_of("12.10.26\n100 burpees for time").board.title, "12.10.26");
  EXPECT_EQ(reading_of("01.05.04\n100 burpees for time").board.title, "01.05.04");
  EXPECT_EQ(blocks_of("5 RFT\n10 thrusters 42.5/30")[0]["items"][0]["load_kg"], json({42.5, 30}));
}

TEST(RoundsForTime, AreSaidShortBeforeAndBehindTheList) {
  for (const std::string text :
       {"x 5 FT\n300 m run\n14 swings", "5x FT\n300 m run\n14 swings", "300 m run\n14 swings\nx 5 FT",
        "300 m run\n14 swings\n5x FT", "300 m run\n14 swings\nx 5", "300 m run / 14 swings x 5 FT"}) {
    const json blocks = blocks_of(text);
    ASSERT_EQ(blocks.size(), 1) << text;
    EXPECT_EQ(blocks[0]["rounds"], 5) << text;
    EXPECT_EQ(blocks[0]["items"].size(), 2) << text;
    EXPECT_EQ(blocks[0]["kind"], "for_time") << text;
  }
  EXPECT_EQ(blocks_of("60 burpees ft\ncap 8")[0]["items"][0]["move"], "burpee");
}

TEST(SingleSets, OfOneLiftOnOneLineAreOneBlock) {
  const json blocks = blocks_of("Deadlift 1x5 @ 75%, 1x3 @ 85%, 1x1 @ 95%");
  ASSERT_EQ(blocks.size(), 1);
  EXPECT_EQ(blocks[0]["sets"], 3);
  EXPECT_EQ(blocks[0]["items"][0]["qty"], json({5, 3, 1}));
  EXPECT_EQ(blocks[0]["items"][0]["load_pct"], json({75, 85, 95}));
}

TEST(SidesOfSets, HoldForEveryLine) {
  const json items = blocks_of("3 sets each side\n10 DB rows\n30 s side plank")[0]["items"];
  EXPECT_EQ(items[0]["each_side"], true);
  EXPECT_EQ(items[1]["each_side"], true);
}

TEST(Scores, MayNameTheMovementThatCounts) {
  const std::string text = "4 x 3 min on, 1 min off\n250 m row\nmax burpees\nscore = burpees";
  EXPECT_EQ(blocks_of(text)[0]["score"], "reps-sum");
  EXPECT_FALSE(remarks(text, "kept-as-words"));
}

}  // namespace
}  // namespace repwright::board
