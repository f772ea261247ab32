#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "board/tidy.hpp"
#include "support/shipped_catalogue.hpp"

/// Boards in a hurry: shortened words, slips, signs for words. All common practice, no source.
namespace repwright::board {
namespace {

nlohmann::json blocks_of(const std::string& text) {
  return api::blocks_json(read(text, test::shipped_catalogue(), {}).board);
}

/// A board, where to look in its blocks, and what stands there.
struct Scrawl {
  std::string board;
  std::string where;  // JSON pointer
  std::string value;  // as JSON
};

class HurriedHands : public ::testing::TestWithParam<Scrawl> {};

TEST_P(HurriedHands, AreReadAsTheyAreMeant) {
  const Scrawl& scrawl = GetParam();
  const nlohmann::json blocks = blocks_of(scrawl.board);
  const nlohmann::json::json_pointer at(scrawl.where);
  ASSERT_TRUE(blocks.contains(at)) << scrawl.board << "\n" << blocks.dump(1);
  EXPECT_EQ(blocks[at], nlohmann::json::parse(scrawl.value)) << scrawl.board;
}

TEST_P(HurriedHands, AreReadTheSameOnceTidied) {
  const domain::Catalogue& catalogue = test::shipped_catalogue();
  const domain::Board once = read(GetParam().board, catalogue, {}).board;
  const std::string tidied = tidy(once, catalogue, {});
  EXPECT_EQ(blocks_of(tidied), api::blocks_json(once)) << tidied;
}

INSTANTIATE_TEST_SUITE_P(
    Names, HurriedHands,
    ::testing::Values(Scrawl{"3 RFT\n10 hang pwr cl 50/35", "/0/items/0/move", R"("bb-hang-power-clean")"},
                      Scrawl{"3 RFT\n12 goblet sq", "/0/items/0/move", R"("kb-goblet-squat")"},
                      Scrawl{"3 RFT\n8 single arm DB OH press", "/0/items/0/move", R"("db-press")"},
                      Scrawl{"3 RFT\n40 alt. DB snatches 22.5", "/0/items/0/move", R"("db-snatch")"},
                      Scrawl{"3 RFT\n10 KB clean & press 20/12", "/0/items/0/move", R"("kb-clean-press")"},
                      Scrawl{"3 RFT\n9 burpess", "/0/items/0/move", R"("burpee")"},
                      Scrawl{"3 RFT\n200 m farmer (2 x 24/16)", "/0/items/0/load_kg", "[24,16]"}));
INSTANTIATE_TEST_SUITE_P(
    Loads, HurriedHands,
    ::testing::Values(Scrawl{"3 RFT\n60 KB swings 24kg/53lb", "/0/items/0/load_kg", "[24]"},
                      Scrawl{"3 RFT\n15 box jumps 24/20", "/0/items/0/height_cm", "[60.96,50.8]"},
                      Scrawl{"3 RFT\n15 box jumps 60/50", "/0/items/0/height_cm", "[60,50]"},
                      Scrawl{"Pull-ups 5x5 wtd +10kg", "/0/items/0/load_kg", "[10]"},
                      Scrawl{"press 3x5 @ last wk + 2.5kg", "/0/items/0/load_rel/plus_kg", "2.5"}));
INSTANTIATE_TEST_SUITE_P(
    Sets, HurriedHands,
    ::testing::Values(
        Scrawl{"Deadlifts 5 sets of 5 @ 77.5%", "/0/sets", "5"},
        Scrawl{"Back squat\n5-5-3-3-1", "/0/items/0/qty", "[5,5,3,3,1]"},
        Scrawl{"Strength: back sq.\n5x5 @ 77.5%, rest 2:30", "/0/rest_s", "150"},
        Scrawl{"Back squat - build to heavy 5\n12 min", "/0/kind", R"("build")"},
        Scrawl{"press 3x5 @ 70%\nthen 1 set max reps @ 80% of todays weight", "/1/items/0/qty", R"("max")"},
        Scrawl{"3 giant sets:\n8 DB press\n12 goblet squats\n90 sec rest", "/0/sets", "3"},
        Scrawl{"4 rds for quality\n8 DB rows, tempo 31X1", "/0/items/0/tempo", R"([3,1,"X",1])"}));
INSTANTIATE_TEST_SUITE_P(
    Clocks, HurriedHands,
    ::testing::Values(
        Scrawl{"20min EMOM\n1 - 15 cal ski\n2 - 12 squats\n3 - 10 burpees\n4 - rest", "/0/slots/0/0/qty",
               "15"},
        Scrawl{"E2MOM x 10\nodd -> 12 cal row\neven -> 10 burpees", "/0/slots/1/0/move", R"("burpee")"},
        Scrawl{"AMRAP 4 x 4, rest 2 between\n9 squats", "/0/rounds", "4"},
        Scrawl{"AMRAP 4 x 4, rest 2 between\n9 squats", "/0/work_s", "240"},
        Scrawl{"8 x 500m row w/ 2:00 rest\naim: hold 2k pace +2 sec", "/0/rest/seconds", "120"},
        Scrawl{"6 rounds\n1:00 max cal row\n1:00 max burpees\n1:00 rest", "/0/kind", R"("circuit")"},
        Scrawl{"6 rounds\n1:00 max cal row\n1:00 max burpees\n1:00 rest", "/0/stations/0/0/unit",
               R"("kcal")"},
        Scrawl{"6 rounds\n1:00 max cal row\n1:00 max burpees\n1:00 rest", "/0/stations/0/0/qty", R"("max")"},
        Scrawl{"Stations 4 x 3 min, 1 min rotate\n1 row (cal)\n2 fan bike", "/0/stations/0/0/note",
               R"("cal")"},
        Scrawl{"Circuit of 2 stations, 3 laps, 1:00 work, 0:20 rest\nrow\nburpees", "/0/stations/1/0/move",
               R"("burpee")"},
        Scrawl{"Circuit of 2 stations, 3 laps, 1:00 work, 0:20 rest\nrow\nburpees", "/0/laps", "3"},
        Scrawl{"3 rounds\n1:00 max cal row\n1:00 rest", "/0/score", R"("kcal-sum")"},
        Scrawl{"3 rounds\n1:00 max cal row\n1:00 rest", "/0/work_s", "60"},
        Scrawl{"4 rounds, 1 min each station, no rest between stations, 1 min rest between "
               "rounds\n1. row for cals\n2. box jumps",
               "/0/lap_rest_s", "60"},
        Scrawl{"0-8 min: AMRAP 10 deadlifts 100/70, 10 push-ups\n8-10 rest\n10-18: AMRAP 10 front "
               "squats 60/40, 10 sit-ups",
               "/0/children/0/items/0/qty", "10"},
        Scrawl{"Min 0-5: 800m run\nMin 5-10: max burpees", "/1/from_s", "300"}));
INSTANTIATE_TEST_SUITE_P(
    Parts, HurriedHands,
    ::testing::Values(
        Scrawl{"Buy in - 50 cal row\n5rds\n 10 pullups\n 20 DU\nBuy out - 50 cal row", "/0/children/2/kind",
               R"("once")"},
        Scrawl{"For time\n1000 m row\nthen\n3 rounds:\n 20 lunges\n 15 push-ups\nthen\n1000 m row",
               "/0/children/2/items/0/qty", "1000"},
        Scrawl{"For time:\n60 cal row\nthen 5 rds\n 10 burpees\nthen 60 cal row", "/0/children/2/items/0/qty",
               "60"},
        Scrawl{"50-40-30\nsit-ups\n*after each round 200m run", "/0/items/1/note", R"("after each round")"},
        Scrawl{"10-8-6-4-2\npull-ups\n2-4-6-8-10\nburpees", "/0/items/1/qty", "[2,4,6,8,10]"},
        Scrawl{"4x [400m run, 20 swings] rest 2 min btw rounds", "/0/items/1/qty", "20"},
        Scrawl{"for time: 21-15-9 deadlifts 100/70 & hspu", "/0/items/1/qty", "[21,15,9]"},
        Scrawl{"3 RFT\n1 rope climb 15ft", "/0/items/0/note", R"("15ft")"},
        Scrawl{"Leg ext. 3x12", "/0/sets", "3"},
        Scrawl{"2 person teams\nAMRAP 20\n40 wall balls - split", "/0/items/0/mode", R"("free")"},
        Scrawl{"Partner day - 30min amrap (IGYG full rounds)\n12 squats", "/0/duration_s", "1800"}));

TEST(HurriedHandsTogether, ListsThatBothFallAreTwoPieces) {
  EXPECT_EQ(blocks_of("21-15-9\npull-ups\n15-12-9\nburpees").size(), 2);
}

TEST(HurriedHandsTogether, AnAmountInMinutesIsNoWindow) {
  EXPECT_EQ(blocks_of("6-8 min run").at(0)["items"][0]["unit"], "s");
}

TEST(HurriedHandsTogether, WordsInSquareBracketsStayWords) {
  EXPECT_EQ(blocks_of("3 RFT\n10 burpees [chest to floor]").at(0)["items"][0]["note"], "chest to floor");
}

}  // namespace
}  // namespace repwright::board
