#include "app/last_time.hpp"

#include <gtest/gtest.h>

namespace repwright::app {
namespace {

using domain::ScoreEntry;
using std::chrono::year;
using std::chrono::year_month_day;

constexpr year_month_day march = year{2027} / 3 / 16;
constexpr year_month_day april = year{2027} / 4 / 20;
constexpr year_month_day may = year{2027} / 5 / 4;
constexpr year_month_day june = year{2027} / 6 / 1;

ScoreEntry scored(year_month_day date, const std::string& text, std::optional<double> effort = {}) {
  ScoreEntry entry;
  entry.date = date;
  entry.board_id = "four-rounds";
  entry.person = {"a01"};
  entry.text = text;
  entry.value = domain::read_score(text);
  entry.effort = effort;
  return entry;
}

TEST(LastTime, IsTheLastDayWithScoresOfThatBoard) {
  std::vector<ScoreEntry> scores{scored(march, "12:57"), scored(april, "12:10"), scored(may, "11:59")};
  scores.push_back(scored(june, "9:00"));
  scores.back().board_id = "another";
  const auto last = last_time(scores, "four-rounds");
  ASSERT_TRUE(last);
  EXPECT_EQ(last->date, may);
  ASSERT_EQ(last->pieces.size(), 1u);
  EXPECT_EQ(last->pieces[0].people, 1);
  EXPECT_FALSE(last_time(scores, "never-done"));
}

TEST(LastTime, TellsBestMiddleAndLastWithTheCappedBehindEverybody) {
  const std::vector<ScoreEntry> scores{scored(march, "cap, 3 rds + 40", 9),
                                       scored(march, "23:35", 8),
                                       scored(march, "11:28"),
                                       scored(march, "cap"),
                                       scored(march, "12:57", 7),
                                       scored(march, "felt fine")};
  const auto last = last_time(scores, "four-rounds");
  ASSERT_TRUE(last);
  EXPECT_EQ(last->pieces, (std::vector<PieceLastTime>{{.piece = "",
                                                       .people = 5,
                                                       .capped = 2,
                                                       .best = "11:28",
                                                       .middle = "23:35",
                                                       .last = "cap",
                                                       .effort = 8.0}}));
}

TEST(LastTime, PutsRoundsBeforeReps) {
  const auto last =
      last_time({scored(march, "6+2"), scored(march, "5+30"), scored(march, "6+12")}, "four-rounds");
  ASSERT_TRUE(last);
  EXPECT_EQ(last->pieces[0].best, "6+12");
  EXPECT_EQ(last->pieces[0].middle, "6+2");
  EXPECT_EQ(last->pieces[0].last, "5+30");
  EXPECT_FALSE(last->pieces[0].effort);
}

TEST(LastTime, KeepsThePiecesOfABoardApart) {
  std::vector<ScoreEntry> scores{scored(march, "4+3"), scored(march, "3+1"), scored(march, "3+8")};
  scores[0].piece = scores[2].piece = "A";
  scores[1].piece = "B";
  const auto last = last_time(scores, "four-rounds");
  ASSERT_TRUE(last);
  ASSERT_EQ(last->pieces.size(), 2u);
  EXPECT_EQ(last->pieces[0].piece, "A");
  EXPECT_EQ(last->pieces[0].people, 2);
  EXPECT_EQ(last->pieces[1].best, "3+1");
}

}  // namespace
}  // namespace repwright::app
