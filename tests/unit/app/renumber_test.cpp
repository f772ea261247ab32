#include "app/renumber.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright::app {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

/// The whole text, after each way.
std::vector<std::string> texts(const std::string& text, NumberKind kind, double from, double to) {
  std::vector<std::string> all;
  for (const Rewrite& way :
       ways_to_renumber(text, {.kind = kind, .from = from, .to = to, .begin = 0, .end = text.size()}))
    all.push_back(std::string(text).replace(way.at, way.length, way.words));
  return all;
}

TEST(Renumber, FindsACountWhereverItStandsAndNotInsideAnother) {
  EXPECT_THAT(texts("12 pull-ups 12/9 kg, 112 m", NumberKind::Count, 12, 9),
              ElementsAre("9 pull-ups 12/9 kg, 112 m", "12 pull-ups 9/9 kg, 112 m"));
  EXPECT_THAT(texts("1.2 km", NumberKind::Count, 2, 1), IsEmpty());
}

TEST(Renumber, WritesKilometresAsMetres) {
  EXPECT_THAT(texts("run 2,0 km easy", NumberKind::Metres, 2000, 1500), ElementsAre("run 1500 m easy"));
  EXPECT_THAT(texts("run 2k", NumberKind::Metres, 2000, 1000), ElementsAre("run 1000 m"));
  EXPECT_THAT(texts("Run 1 mile", NumberKind::Metres, 1609.344, 800), ElementsAre("Run 800 m"));
  EXPECT_THAT(texts("2 kg", NumberKind::Metres, 2000, 1000), IsEmpty());
  EXPECT_THAT(texts("200 m", NumberKind::Metres, 200, 100), ElementsAre("100 m"));
}

TEST(Renumber, KnowsTimesInMinutesSecondsAndOnTheClock) {
  EXPECT_THAT(texts("AMRAP 11", NumberKind::Time, 660, 540), ElementsAre("AMRAP 9"));
  EXPECT_THAT(texts("11:00 on the clock", NumberKind::Time, 660, 540), ElementsAre("9:00 on the clock"));
  EXPECT_THAT(texts("e90s x 8", NumberKind::Time, 90, 120), ElementsAre("e120s x 8"));
  EXPECT_THAT(texts("E3MOM x 7", NumberKind::Time, 180, 210), ElementsAre("Every 3:30 x 7"));
  EXPECT_THAT(texts("every 3 min", NumberKind::Time, 180, 210), ElementsAre("every 3:30 min"));
}

}  // namespace
}  // namespace repwright::app
