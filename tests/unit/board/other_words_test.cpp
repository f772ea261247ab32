#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "board/tidy.hpp"
#include "support/shipped_catalogue.hpp"

/// The same things in the words of other coaches. All common practice, no source.
namespace repwright::board {
namespace {

nlohmann::json blocks_of(const std::string& text) {
  return api::blocks_json(read(text, test::shipped_catalogue(), {}).board);
}

/// A board, where to look in its first block, and what stands there.
struct Wording {
  std::string board;
  std::string where;  // JSON pointer
  std::string value;  // as JSON
};

class OtherWords : public ::testing::TestWithParam<Wording> {};

TEST_P(OtherWords, MeanTheSame) {
  const Wording& wording = GetParam();
  const nlohmann::json blocks = blocks_of(wording.board);
  ASSERT_FALSE(blocks.empty()) << wording.board;
  const nlohmann::json::json_pointer at(wording.where);
  ASSERT_TRUE(blocks[0].contains(at)) << wording.board << "\n" << blocks[0].dump(1);
  EXPECT_EQ(blocks[0][at], nlohmann::json::parse(wording.value)) << wording.board;
}

INSTANTIATE_TEST_SUITE_P(
    Counts, OtherWords,
    ::testing::Values(Wording{"10 to 1\nburpees", "/items/0/qty", "[10,9,8,7,6,5,4,3,2,1]"},
                      Wording{"1-4 ladder\nburpees", "/items/0/qty", "[1,2,3,4]"},
                      Wording{"for time, from 4 to 1\nburpees", "/items/0/qty", "[4,3,2,1]"},
                      Wording{"21/15/9\nburpees\npull-ups", "/items/1/qty", "[21,15,9]"},
                      Wording{"Front squat: 8, 6, 4, 2", "/items/0/qty", "[8,6,4,2]"},
                      Wording{"3x:\n400 m run\n12 pull-ups", "/rounds", "3"},
                      Wording{"Pull-ups 5 x AMRAP, rest 2'", "/items/0/qty", R"("max")"},
                      Wording{"row 3x12", "/items/0/unit", R"("reps")"}));
INSTANTIATE_TEST_SUITE_P(
    Clocks, OtherWords,
    ::testing::Values(Wording{"For time w/ a 20 minute cap: 100 squats", "/cap_s", "1200"},
                      Wording{"16 min alt EMOM: 10 squats / 5 burpees", "/intervals", "16"},
                      Wording{"Every 5 min x 5\n400 m run\nrest the remaining time", "/every_s", "300"},
                      Wording{"10 squats\n10 push-ups\nfor time", "/kind", R"("for_time")"},
                      Wording{"Not for time, 3 rounds: 10 push-ups, 20 sit-ups", "/kind", R"("rounds")"},
                      Wording{"Bench press 5x5, rest 1\u00BD min", "/rest_s", "90"},
                      Wording{"Stations 2 x 3 min, 1 min rotate\n1 row cals\n2 plank", "/laps", "1"},
                      Wording{"Stations 2 x 3 min, 1 min rotate\n1 row cals\n2 plank", "/rest_s", "60"},
                      Wording{"5 rounds\n1 min row\n1 min wall balls\n1 min push-ups\n1 min rest", "/kind",
                              R"("circuit")"},
                      Wording{"min 1 1 burpee, min 2 2 burpees, and so on till you fail", "/score",
                              R"("last-full-minute")"}));
INSTANTIATE_TEST_SUITE_P(
    Work, OtherWords,
    ::testing::Values(Wording{"30 min easy bike", "/items/0/pace", R"("easy")"},
                      Wording{"3 RFT: 20 lunges w/ 2 x 22.5's", "/items/0/implements", "2"},
                      Wording{"3 RFT: 20 lunges w/ 2 x 22.5's", "/items/0/load_kg", "[22.5]"},
                      Wording{"DB bench 5 x 8 - 2 x 20/14 kg", "/items/0/load_kg", "[20,14]"},
                      Wording{"pairs, for time: 50 synchro burpees", "/items/0/share", R"("sync")"},
                      Wording{"5 km run or 6 km row, for time", "/items/0/scale/0/factor", "1.2"},
                      Wording{"Teams of 4 relay\neach person 3 x 250 m row", "/turns_each", "3"},
                      Wording{"accumulate 100 push-ups\nevery time you stop 10 squats",
                              "/penalty/items/0/move", R"("air-squat")"},
                      Wording{"\u27A1\uFE0F 9 deadlifts", "/items/0/qty", "9"}));

INSTANTIATE_TEST_SUITE_P(
    Loads, OtherWords,
    ::testing::Values(Wording{"AMRAP 10\n12 overhead lunges 15/10 plate", "/items/0/load_kg", "[15,10]"},
                      Wording{"AMRAP 10\n12 lunges 15/10 plate", "/items/0/note", R"("plate")"},
                      Wording{"AMRAP 10\n8 ground to overhead 20/15 kg plate", "/items/0/move",
                              R"("plate-ground-to-overhead")"},
                      Wording{"AMRAP 10\n8 lunges @20 kg bumper plate", "/items/0/note", R"("plate")"},
                      Wording{"AMRAP 10\n10 swings 24/16\n10 plate hops", "/items/1/move", R"("plate-hop")"},
                      Wording{"AMRAP 10\n8 deadlifts 60 kg 10 KB swings", "/items/0/load_kg", "[60]"}));
INSTANTIATE_TEST_SUITE_P(NotForTime, OtherWords,
                         ::testing::Values(Wording{"3 sets NFT\n8 DB rows\n10 ring rows", "/sets", "3"},
                                           Wording{"3 rounds NFT\n10 sit-ups\n10 push-ups", "/kind",
                                                   R"("rounds")"},
                                           Wording{"NFT: 3 rounds\n10 sit-ups", "/kind", R"("rounds")"}));
INSTANTIATE_TEST_SUITE_P(
    ByTheHand, OtherWords,
    ::testing::Values(Wording{"3 RFT\n20 1-arm KB swings 24/16", "/items/0/qty", "20"},
                      Wording{"3 RFT\n20 1-arm KB swings 24/16", "/items/0/move", R"("kb-swing")"},
                      Wording{"3 RFT\n8 1 arm DB snatch 22.5/15", "/items/0/move", R"("db-snatch")"},
                      Wording{"1-arm DB row 3x8", "/items/0/qty", "8"},
                      Wording{"3 RFT\n12 2-hand KB swings", "/items/0/move", R"("kb-swing")"},
                      Wording{"3 RFT\n1 leg raise", "/items/0/qty", "1"},
                      Wording{"3 RFT\n10 double KB front squats", "/items/0/implements", "2"},
                      Wording{"3 RFT\n10 double KB front squats", "/items/0/move", R"("kb-front-squat")"},
                      Wording{"3 RFT\n12 KB front squats 24/16", "/items/0/move", R"("kb-front-squat")"},
                      Wording{"3 RFT\n12 DB front squats", "/items/0/move", R"("db-front-squat")"},
                      Wording{"3 RFT\n8 double DB deadlifts 22.5/15", "/items/0/move", R"("db-deadlift")"},
                      Wording{"3 RFT\n8 dbl KB cleans", "/items/0/implements", "2"},
                      Wording{"3 RFT\n30 double unders", "/items/0/move", R"("double-under")"}));
INSTANTIATE_TEST_SUITE_P(Versions, OtherWords,
                         ::testing::Values(Wording{"3 RFT\n10 du's (no dubs? 30 su)", "/items/0/scale/0/move",
                                                   R"("single-under")"},
                                           Wording{"3 RFT\n10 du's (no dubs? 30 su)",
                                                   "/items/0/scale/0/factor", "3"},
                                           Wording{"3 RFT\n10 pull-ups (if no pull-ups: ring rows)",
                                                   "/items/0/scale/0", R"("ring-row")"}));
INSTANTIATE_TEST_SUITE_P(
    Growing, OtherWords,
    ::testing::Values(
        Wording{"1 burpee in the first minute, 2 in the second, 3 in the third, ... until you can't",
                "/slots/0/0/qty", R"({"start":1,"step":1})"},
        Wording{"1 burpee in the first minute, 2 in the second, 3 in the third, ... until you can't",
                "/score", R"("last-full-minute")"},
        Wording{"Every minute: 2 in the 1st minute, 4 in the 2nd ...\nburpees\nto failure", "/slots/0/0/qty",
                R"({"start":2,"step":2})"},
        Wording{"EMOM 12: 2 pull-ups in minute 1, 3 in minute 2, and so on", "/intervals", "12"},
        Wording{"3-6-9-12\u2026\nthrusters 40/30\n+ same burpees\nAMRAP 7", "/duration_s", "420"},
        Wording{"3-6-9-12\u2026\nthrusters 40/30\n+ same burpees\nAMRAP 7", "/items/1/qty",
                R"({"start":3,"step":3})"},
        Wording{"AMRAP 7\n3-6-9-...\nthrusters\nsame number of burpees", "/items/1/move", R"("burpee")"},
        Wording{"3 RFT\n12 swings\nsame push-ups", "/items/1/qty", "12"}));

TEST(OtherWords, AClockBelowWorkIsTheWorksOnlyAtTheFoot) {
  EXPECT_EQ(blocks_of("10 burpees\n10 squats\nAMRAP 7").size(), 1);
  EXPECT_EQ(blocks_of("10 burpees\nAMRAP 7\n10 squats").size(), 2);
  EXPECT_EQ(blocks_of("3 RFT\n10 burpees\nAMRAP 7: 10 squats").size(), 2);
}

TEST(OtherWords, UnequalStepsAreNoLadderByTheMinute) {
  EXPECT_FALSE(
      blocks_of("1 burpee in the first minute, 2 in the second, 5 in the third")[0].contains("every_s"));
}

TEST(OtherWords, WhatIsReadInOtherWordsIsReadTheSameOnceTidied) {
  const domain::Catalogue& catalogue = test::shipped_catalogue();
  const std::vector<std::string> boards{
      "AMRAP 10\n12 lunges 15/10 plate\n8 ground to overhead 20/15 kg plate", "3 sets NFT\n8 DB rows",
      "3 RFT\n20 1-arm KB swings 24/16\n10 double KB front squats 16 kg\n10 du's (no dubs? 30 su)",
      "3-6-9-12\u2026\nthrusters 40/30\n+ same burpees\nAMRAP 7",
      "1 burpee in the first minute, 2 in the second, ... until you can't"};
  for (const std::string& board : boards) {
    const domain::Board once = read(board, catalogue, {}).board;
    EXPECT_EQ(blocks_of(tidy(once, catalogue, {})), api::blocks_json(once)) << tidy(once, catalogue, {});
  }
}

TEST(OtherWords, ARestBelowTimedIntervalsPartsTwoPieces) {
  const auto blocks =
      blocks_of("8 rounds 20s work 10s rest: air squats\n1 min rest\n8 rounds 20s work 10s rest: push ups");
  ASSERT_EQ(blocks.size(), 3);
  EXPECT_EQ(blocks[1]["kind"], "rest");
  EXPECT_EQ(blocks[2]["rounds"], 8);
}

TEST(OtherWords, WorkAtNobodysClockIsWrittenSoAgain) {
  const domain::Catalogue& catalogue = test::shipped_catalogue();
  const Reading reading = read("Not for time, 3 rounds: 10 push-ups, 20 sit-ups", catalogue, {});
  EXPECT_EQ(tidy(reading.board, catalogue, {}), "not for time\n3 rounds\n 10 push-ups\n 20 sit-ups\n");
}

TEST(OtherWords, ADateIsNoListOfCounts) {
  const Reading reading = read("12/9/26\n100 burpees for time", test::shipped_catalogue(), {});
  EXPECT_EQ(reading.board.title, "12/9/26");
}

}  // namespace
}  // namespace repwright::board
