#include "app/past_scores.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped.hpp"

namespace repwright::app {
namespace {

using std::chrono::day;
using std::chrono::month;
using std::chrono::year;
using std::chrono::year_month_day;

constexpr year_month_day early = year(2027) / month(3) / day(3);
constexpr year_month_day late = year(2027) / month(3) / day(10);

struct PastScores : ::testing::Test {
  OpenGym gym{.knowledge = {.catalogue = test::shipped_catalogue(),
                            .constants = test::shipped_constants(),
                            .house = {},
                            .hall = {},
                            .scores = {},
                            .boards = {{"five", "MONDAY FIVE\n5 RFT\n10 push-ups\n10 air squats\n"},
                                       {"many", "AMRAP 6\n10 push-ups\n10 sit-ups\n"}}},
              .people = {},
              .classes = {},
              .versions = {}};

  PastScores() {
    for (const char* id : {"ana", "bo"}) {
      domain::Person& person = gym.people.emplace_back();
      person.id = {id};
      person.name = std::string(id) + " Invented";
    }
  }
  void scored(const char* who, const char* board, const char* text, year_month_day date) {
    domain::ScoreEntry entry;
    entry.date = date;
    entry.board_id = board;
    entry.person = {who};
    entry.text = text;
    entry.value = domain::read_score(text);
    gym.knowledge.scores.push_back(entry);
  }
  std::vector<PastScore> of_ana(std::size_t most = 10) const { return past_scores(gym, {"ana"}, most, {}); }
};

TEST_F(PastScores, StandBesideAForecastInTheSameMeasure) {
  scored("ana", "five", "6:10", early);
  const auto past = of_ana();
  ASSERT_EQ(past.size(), 1u);
  EXPECT_EQ(past[0].title, "MONDAY FIVE");
  ASSERT_TRUE(past[0].forecast);
  EXPECT_EQ(past[0].forecast->measure, domain::Measure::Seconds);
  EXPECT_LT(past[0].forecast->score.p10, past[0].forecast->score.p90);
  EXPECT_EQ(past[0].value, 370);
}

TEST_F(PastScores, CountRoundsAsReps) {
  scored("ana", "many", "4+12", early);
  const auto past = of_ana();
  ASSERT_EQ(past.size(), 1u);
  EXPECT_EQ(past[0].value, 4 * 20 + 12);
}

TEST_F(PastScores, AreOfThePersonAloneTheLatestFirst) {
  scored("ana", "five", "6:10", early);
  scored("bo", "five", "7:10", early);
  scored("ana", "many", "4+12", late);
  const auto past = of_ana();
  ASSERT_EQ(past.size(), 2u);
  EXPECT_EQ(past[0].entry.date, late);
  EXPECT_EQ(past[1].entry.text, "6:10");
  EXPECT_EQ(of_ana(1).size(), 1u);
  EXPECT_TRUE(past_scores(gym, {"nobody"}, 10, {}).empty());
}

TEST_F(PastScores, OfABoardThatIsGoneHaveNoForecast) {
  scored("ana", "elsewhere", "6:10", early);
  const auto past = of_ana();
  ASSERT_EQ(past.size(), 1u);
  EXPECT_FALSE(past[0].forecast);
  EXPECT_EQ(past[0].title, "elsewhere");
}

TEST_F(PastScores, KeptAsWordsOrCappedHaveNoNumber) {
  scored("ana", "five", "cap", early);
  EXPECT_EQ(of_ana()[0].value, std::nullopt);
}

}  // namespace
}  // namespace repwright::app
