#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "support/shipped_catalogue.hpp"

/// The marks of chalk, one by one. All common practice, no source.
namespace repwright::board {
namespace {

nlohmann::json blocks_of(const std::string& text) {
  return api::blocks_json(read(text, test::shipped_catalogue(), {}).board);
}
nlohmann::json item_of(const std::string& line) {
  return blocks_of("3 RFT\n" + line)[0]["items"][0];
}

/// One line of work in three rounds, and a field that it must have.
struct Mark {
  std::string line;
  std::string field;
  std::string value;  // as JSON
};

class Marks : public ::testing::TestWithParam<Mark> {};

TEST_P(Marks, MeanWhatTheyMeanOnAWall) {
  const Mark& mark = GetParam();
  EXPECT_EQ(item_of(mark.line)[mark.field], nlohmann::json::parse(mark.value)) << mark.line;
}

INSTANTIATE_TEST_SUITE_P(Amounts, Marks,
                         ::testing::Values(Mark{"14 swings", "qty", "14"}, Mark{"run 0.8k", "qty", "800"},
                                           Mark{"run 0,8 km", "qty", "800"}, Mark{"2k row", "qty", "2000"},
                                           Mark{"1,000 m row", "qty", "1000"},
                                           Mark{"18/14 cal ski", "qty", R"({"pair":[18,14]})"},
                                           Mark{"35s plank", "qty", "35"}, Mark{":30 plank", "qty", "30"},
                                           Mark{"1' plank", "qty", "60"}, Mark{"1'30 plank", "qty", "90"},
                                           Mark{"90\" plank", "qty", "90"}, Mark{"2:30 plank", "qty", "150"},
                                           Mark{"1\u203230\u2033 plank", "qty", "90"},
                                           Mark{"max push-ups", "qty", "\"max\""},
                                           Mark{"max-2 push-ups", "qty", "\"max-2\""}));
INSTANTIATE_TEST_SUITE_P(Kit, Marks,
                         ::testing::Values(Mark{"8 landmine presses 25/15", "move", "\"landmine-press\""},
                                           Mark{"10 T-bar rows", "move", "\"landmine-row\""},
                                           Mark{"12 landmine twists", "move", "\"landmine-rotation\""},
                                           Mark{"15 lat pulldowns", "move", "\"band-pull-down\""},
                                           Mark{"20 tricep pushdowns", "move", "\"band-press-down\""},
                                           Mark{"15 banded curls", "move", "\"band-curl\""},
                                           Mark{"12 cable chops", "move", "\"band-chop\""},
                                           Mark{"12 cable rows", "move", "\"band-row\""},
                                           Mark{"20 m yoke walk 90/60", "load_kg", "[90,60]"},
                                           Mark{"1 mile ruck 10 kg", "move", "\"ruck-walk\""},
                                           Mark{"400 m swim", "move", "\"swim\""},
                                           Mark{"5 nordics", "move", "\"nordic-curl\""},
                                           Mark{"10 ab wheel roll-outs", "move", "\"wheel-roll-out\""},
                                           Mark{"20 s ring support", "move", "\"ring-support-hold\""},
                                           Mark{"10 triple unders", "move", "\"triple-under\""}));
INSTANTIATE_TEST_SUITE_P(Spelling, Marks,
                         ::testing::Values(Mark{"10 PUSH-UPS", "move", "\"push-up\""},
                                           Mark{"10 pushups", "move", "\"push-up\""},
                                           Mark{"10 push\u2010ups", "move", "\"push-up\""},
                                           Mark{"10 push\u2013ups", "move", "\"push-up\""},
                                           Mark{"10\u00A0push ups", "move", "\"push-up\""},
                                           Mark{"\u2022 10 push-ups", "move", "\"push-up\""},
                                           Mark{"- 10 push-ups", "move", "\"push-up\""},
                                           Mark{"1) 10 push-ups", "move", "\"push-up\""},
                                           Mark{"10 burpes", "move", "\"burpee\""},
                                           Mark{"10 sqaut jumps", "move", "\"jump-squat\""},
                                           Mark{"10 push-usp", "move", "\"push-up\""},
                                           Mark{"10 lat burpees ovr bar", "move", "\"burpee-over-line\""},
                                           Mark{"100 m farmer\u2019s carry", "move", "\"farmer-carry\""}));
INSTANTIATE_TEST_SUITE_P(Loads, Marks,
                         ::testing::Values(Mark{"14 KBS 24/16", "load_kg", "[24,16]"},
                                           Mark{"14 KBS @24/16 kg", "load_kg", "[24,16]"},
                                           Mark{"14 KBS (24/16)", "load_kg", "[24,16]"},
                                           Mark{"14 KBS @ 20", "load_kg", "[20]"},
                                           Mark{"10 DB lunges 2x15/10", "load_kg", "[15,10]"},
                                           Mark{"10 DB lunges 2\u00D715/10", "implements", "2"},
                                           Mark{"10 DL @ 100 lb", "load_kg", "[45.359237]"},
                                           Mark{"10 DL 100#", "load_kg", "[45.359237]"},
                                           Mark{"bag carry 200 m, 10 or 6 kg", "load_kg", "[10,6]"},
                                           Mark{"10 box jumps 24\"/20\"", "height_cm", "[60.96,50.8]"}));
INSTANTIATE_TEST_SUITE_P(Doubtful, Marks,
                         ::testing::Values(Mark{"9 cal row", "move", "\"rower\""},
                                           Mark{"500 m row", "move", "\"rower\""},
                                           Mark{"12 thrusters 2x12", "move", "\"db-squat-press\""},
                                           Mark{"6 dl 100/70", "move", "\"bb-deadlift\""},
                                           Mark{"6 KB dl", "move", "\"kb-deadlift\""},
                                           Mark{"5 down-ups", "move", "\"step-back-burpee\""},
                                           Mark{"10 DB push press", "move", "\"db-push-press\""},
                                           Mark{"8 pulls", "version", "\"personal\""}));
INSTANTIATE_TEST_SUITE_P(Sides, Marks,
                         ::testing::Values(Mark{"9 box step ups (each leg)", "qty", "18"},
                                           Mark{"10 DB lunges each leg", "qty", "20"},
                                           Mark{"10/10 single-leg rdl", "qty", "10"},
                                           Mark{"10/10 single-leg rdl", "each_side", "true"},
                                           Mark{"20m suitcase L/R", "each_side", "true"},
                                           Mark{":30 side plank e/s", "each_side", "true"},
                                           Mark{"DB row 10/s", "each_side", "true"},
                                           Mark{"14 alt DB snatch", "qty", "14"}));

TEST(Marks, AreReadAlikeWithAnyLineEnd) {
  const nlohmann::json plain = blocks_of("AMRAP 13:\n7 ring rows\n26 single unders\n");
  EXPECT_EQ(blocks_of("AMRAP 13:\r\n7 ring rows\r\n26 single unders\r\n"), plain);
  EXPECT_EQ(blocks_of("AMRAP 13:\r7 ring rows\r26 single unders"), plain);
  EXPECT_EQ(blocks_of("\tAMRAP 13:\n\t7 ring rows\n\t26\tsingle unders"), plain);
}

TEST(Marks, FollowTheHouse) {
  domain::House house;
  house.mass_unit = domain::MassUnit::Pounds;
  house.pull_up_may_swing = true;
  house.tempo = domain::TempoOrder::UpTopDownPause;
  house.minute_one_is_odd = false;
  const auto items = [&](const std::string& text) {
    return nlohmann::json(api::blocks_json(read(text, test::shipped_catalogue(), house).board))[0];
  };
  EXPECT_EQ(items("3 RFT\n14 KBS 53")["items"][0]["load_kg"][0], 53 * 0.45359237);
  EXPECT_EQ(items("3 RFT\n5 pull-ups")["items"][0]["move"], "kip-pull-up");
  EXPECT_EQ(items("3 RFT\n5 strict pull-ups")["items"][0]["move"], "pull-up");
  EXPECT_EQ(items("RDL 4x8 @3-1-1-0")["items"][0]["tempo"], nlohmann::json::parse("[1,0,3,1]"));
  EXPECT_EQ(items("EMOM 12\nodd: 5 burpees\neven: 9 sit-ups")["slots"][0][0]["move"], "sit-up");
}

TEST(Marks, CarryTheWordsOfTheFloor) {
  const nlohmann::json block = blocks_of(
      "AMRAP 12, heats 2, quiet, vest 6 kg\n10 swings 2nd station: ring rows\nkeep the bar\nodd start with "
      "push-ups\n"
      "start every 15 s\nintent 3+ rounds, RPE 7")[0];
  EXPECT_EQ(block["heats"], 2);
  EXPECT_EQ(block["quiet"], true);
  EXPECT_EQ(block["vest_kg"], 6);
  EXPECT_EQ(block["keep_place"], true);
  EXPECT_EQ(block["odd_start"], "push-up");
  EXPECT_EQ(block["start"], nlohmann::json::parse(R"({"kind":"stagger","every_s":15,"people":1})"));
  EXPECT_EQ(block["intent"], nlohmann::json::parse(R"({"rounds":{"min":3},"effort":7})"));
  EXPECT_EQ(block["items"][0]["second_station"], "ring-row");
}

TEST(Marks, SecondStationOnALineOfItsOwnStandsBesideTheWorkThatItEases) {
  const Reading reading =
      read("AMRAP 15\n10 pull-ups\n20 step-ups\n2nd station: ring rows\n", test::shipped_catalogue(), {});
  const domain::Block& block = reading.board.blocks.at(0);
  ASSERT_EQ(block.items.size(), 2u);
  EXPECT_EQ(block.items[0].second_station, domain::MovementId{"ring-row"});
  EXPECT_FALSE(block.items[1].second_station);
}

}  // namespace
}  // namespace repwright::board
