#include "app/lately.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped.hpp"

namespace repwright::app {
namespace {

using std::chrono::day;
using std::chrono::month;
using std::chrono::year;
using std::chrono::year_month_day;

constexpr year_month_day class_day = year(2027) / month(3) / day(26);
constexpr auto push = static_cast<std::size_t>(body::Group::Push);

domain::ScoreEntry scored(const char* board, const char* text, year_month_day date) {
  domain::ScoreEntry entry;
  entry.date = date;
  entry.board_id = board;
  entry.person = {"ana"};
  entry.text = text;
  entry.value = domain::read_score(text);
  return entry;
}

/// A gym with one board for time, one for rounds, and Ana, who did both.
struct Lately : ::testing::Test {
  GymKnowledge gym{
      .catalogue = test::shipped_catalogue(),
      .constants = test::shipped_constants(),
      .house = {},
      .hall = {},
      .scores = {},
      .boards = {{"five", "5 RFT\n10 push-ups\n"}, {"many", "AMRAP 6\n10 push-ups\n10 sit-ups\n"}}};
  std::vector<domain::Person> people;
  domain::GymClass gym_class;

  Lately() {
    domain::Person& ana = people.emplace_back();
    ana.id = {"ana"};
    ana.name = "Ana Invented";
    gym_class.date = class_day;
  }
  std::map<domain::PersonId, rehearsal::History> known() const {
    return lately(gym, people, std::chrono::sys_days{*gym_class.date});
  }
};

TEST_F(Lately, CountsTheRepsOfAFinishedPieceInItsWeek) {
  gym.scores = {scored("five", "3:10", year(2027) / month(3) / day(25)),
                scored("five", "3:20", year(2027) / month(3) / day(17))};
  const auto histories = known();
  const auto& weeks = histories.at({"ana"}).weeks;
  ASSERT_EQ(weeks.size(), 4u);
  EXPECT_NEAR(weeks[3][push], 50, 1e-6);
  EXPECT_NEAR(weeks[2][push], 50, 1e-6);
  EXPECT_EQ(weeks[1][push], 0);
}

TEST_F(Lately, CountsAsFarAsTheScoreSays) {
  gym.scores = {scored("many", "3+10", year(2027) / month(3) / day(24))};
  EXPECT_NEAR(known().at({"ana"}).weeks[3][push], 35, 6);
}

TEST_F(Lately, KnowsNothingOfOlderScoresOtherBoardsAndTheDayItself) {
  gym.scores = {scored("five", "3:10", year(2027) / month(2) / day(20)),
                scored("elsewhere", "3:10", year(2027) / month(3) / day(24)),
                scored("five", "3:10", class_day)};
  EXPECT_TRUE(known().empty());
}

TEST_F(Lately, LetsTheRehearsalSayThatItIsMuchMore) {
  gym.scores = {scored("five", "3:10", year(2027) / month(3) / day(25))};
  const auto kinds = [&](const char* text) {
    const board::Reading reading = board::read(text, gym.catalogue, gym.house);
    const auto result = rehearse_class({.reading = reading,
                                        .gym = gym,
                                        .people = people,
                                        .gym_class = gym_class,
                                        .heads = {},
                                        .runs = 5,
                                        .threads = 1,
                                        .stop = {},
                                        .history = known()});
    std::vector<domain::FindingKind> found;
    if (result)
      for (const domain::Finding& finding : result->rehearsal.findings) found.push_back(finding.kind);
    return found;
  };
  EXPECT_THAT(kinds("13 RFT\n10 push-ups\n"), ::testing::Contains(domain::FindingKind::MuchMoreThanLately));
  EXPECT_THAT(kinds("6 RFT\n10 push-ups\n"),
              ::testing::Not(::testing::Contains(domain::FindingKind::MuchMoreThanLately)));
}

}  // namespace
}  // namespace repwright::app
