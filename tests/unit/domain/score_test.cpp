#include "domain/score.hpp"

#include <gtest/gtest.h>

namespace repwright::domain {
namespace {

using base::kilogram;
using base::metre;
using base::minute;
using base::second;

TEST(ReadScore, UnderstandsWhatIsShoutedAcrossTheFloor) {
  EXPECT_EQ(read_score("22:10"), ScoreValue(TimeScore{1330 * second}));
  EXPECT_EQ(read_score("4+12"), ScoreValue(RoundsScore{4, 12}));
  EXPECT_EQ(read_score("3 Rds + 40"), ScoreValue(RoundsScore{3, 40}));
  EXPECT_EQ(read_score("6 rounds"), ScoreValue(RoundsScore{6, 0}));
  EXPECT_EQ(read_score("44"), ScoreValue(RepsScore{44}));
  EXPECT_EQ(read_score("120 reps"), ScoreValue(RepsScore{120}));
  EXPECT_EQ(read_score("61,5 kg"), ScoreValue(LoadScore{61.5 * kilogram}));
  EXPECT_EQ(read_score("154 lb"), ScoreValue(LoadScore{154 * base::pound}));
  EXPECT_EQ(read_score("2400m"), ScoreValue(DistanceScore{2400 * metre}));
  EXPECT_EQ(read_score("5.2 km"), ScoreValue(DistanceScore{5200 * metre}));
  EXPECT_EQ(read_score("83 cal"), ScoreValue(KcalScore{83}));
}

TEST(ReadScore, KnowsThatACappedScoreIsNotTheCap) {
  EXPECT_EQ(read_score("cap, 3 rds + 40"), ScoreValue(CappedScore{{}, RoundsScore{3, 40}}));
  EXPECT_EQ(read_score("Cap 34:00, 3+40"), ScoreValue(CappedScore{34 * minute, RoundsScore{3, 40}}));
  EXPECT_EQ(read_score("capped: 172"), ScoreValue(CappedScore{{}, RoundsScore{0, 172}}));
  EXPECT_EQ(read_score("cap"), ScoreValue(CappedScore{}));
}

TEST(ReadScore, KeepsTheRestAsWords) {
  for (const char* entered :
       {"", "five rounds and something", "4+", "+4", "-3 kg", "4 5", "cap maybe", "12:75", "kg"})
    EXPECT_EQ(read_score(entered), ScoreValue(std::monostate())) << entered;
}

}  // namespace
}  // namespace repwright::domain
