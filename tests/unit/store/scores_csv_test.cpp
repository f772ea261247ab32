#include "store/scores_csv.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright::store {
namespace {

using testing::AllOf;
using testing::HasSubstr;

TEST(ScoresFile, ReadsEveryColumn) {
  const auto file = read_scores(
      "date;class;board;piece;person;score;version;effort;flag;entered_by\n"
      "2027-04-28;wed-1;retest-a;A;a06;27:10;pull-up / push-up / 60 cm;8,5;Ill;head-coach\n",
      "scores.csv");
  ASSERT_TRUE(file.has_value()) << file.error().message;
  using namespace std::chrono_literals;
  const domain::ScoreEntry expected{2027y / 4 / 28,
                                    "wed-1",
                                    "retest-a",
                                    "A",
                                    {"a06"},
                                    "27:10",
                                    domain::TimeScore{1630 * base::second},
                                    "pull-up / push-up / 60 cm",
                                    8.5,
                                    domain::DayFlag::Ill,
                                    "head-coach",
                                    ""};
  EXPECT_EQ(file->entries, std::vector<domain::ScoreEntry>{expected});
  EXPECT_TRUE(file->notes.empty());
}

TEST(ScoresFile, KeepsWordsAndNotesThem) {
  const auto file =
      read_scores("date,person,score,mood\n2027-05-27,a01,five rounds and something,good\n", "scores.csv");
  ASSERT_TRUE(file.has_value());
  EXPECT_EQ(file->entries[0].text, "five rounds and something");
  EXPECT_THAT(file->notes,
              testing::ElementsAre(
                  "column 'mood' is left out: not a known column",
                  "scores.csv:2: score 'five rounds and something' is kept as words and teaches nothing"));
}

TEST(ScoresFile, NamesEveryBadCell) {
  const auto file = read_scores("date,person,score,effort,flag\n28.4.2027,,,11,tired\n", "scores.csv");
  ASSERT_FALSE(file.has_value());
  EXPECT_THAT(file.error().message, AllOf(HasSubstr("scores.csv:2: date: is '28.4.2027', expected a day"),
                                          HasSubstr("person: is ''"), HasSubstr("score: is ''"),
                                          HasSubstr("effort: is '11', expected 0 to 10"),
                                          HasSubstr("flag: is 'tired', expected ill, hot, easy or nothing")));
}

TEST(ScoresFile, WantsDatePersonAndScore) {
  const auto file = read_scores("score,score\n1,2\n", "scores.csv");
  ASSERT_FALSE(file.has_value());
  EXPECT_THAT(file.error().message, AllOf(HasSubstr("date: is missing"), HasSubstr("person: is missing"),
                                          HasSubstr("score: stands twice")));
}

}  // namespace
}  // namespace repwright::store
