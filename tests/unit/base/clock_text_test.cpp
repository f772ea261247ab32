#include "base/clock_text.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <string>

#include "base/require.hpp"

namespace repwright::base {
namespace {

TEST(FormatClock, ShowsMinutesAndFromAnHourOnHours) {
  EXPECT_EQ(format_clock(0 * second), "0:00");
  EXPECT_EQ(format_clock(725 * second), "12:05");
  EXPECT_EQ(format_clock(3599 * second), "59:59");
  EXPECT_EQ(format_clock(3725 * second), "1:02:05");
  EXPECT_EQ(format_clock(36000 * second), "10:00:00");
}

TEST(FormatClock, RoundsToTheNearestSecond) {
  EXPECT_EQ(format_clock(59.4 * second), "0:59");
  EXPECT_EQ(format_clock(59.5 * second), "1:00");
  EXPECT_EQ(format_clock(3599.5 * second), "1:00:00");
}

TEST(FormatClock, PutsASignBeforeTimesBelowZeroOnly) {
  EXPECT_EQ(format_clock(-65 * second), "-1:05");
  EXPECT_EQ(format_clock(-0.4 * second), "0:00");
}

TEST(FormatClock, ShowsFiniteTimesOnly) {
  EXPECT_THROW(format_clock(std::numeric_limits<double>::quiet_NaN() * second), Bug);
  EXPECT_THROW(format_clock(1e12 * second), Bug);
}

TEST(ParseClock, ReadsResultsAsPeopleWriteThem) {
  EXPECT_EQ(parse_clock("0:45").value(), 45 * second);
  EXPECT_EQ(parse_clock("8:05").value(), 485 * second);
  EXPECT_EQ(parse_clock("75:00").value(), 75 * minute);
  EXPECT_EQ(parse_clock("1:02:05").value(), 3725 * second);
  EXPECT_EQ(parse_clock("1:02:05.5").value(), 3725.5 * second);
}

TEST(ParseClock, TakesAPointOrACommaAndUpToThreeDecimals) {
  EXPECT_NEAR(parse_clock("4:32.5").value().si(), 272.5, 1e-12);
  EXPECT_NEAR(parse_clock("4:32,5").value().si(), 272.5, 1e-12);
  EXPECT_NEAR(parse_clock("4:32.07").value().si(), 272.07, 1e-12);
  EXPECT_NEAR(parse_clock("4:32.125").value().si(), 272.125, 1e-12);
}

TEST(ParseClock, RefusesOtherShapesInWordsForTheWriter) {
  for (const char* text :
       {"", "45", ":45", "4:5", "4:60", "4:032", "1:60:00", "1:2:03", "1:02:03:04", "-4:05", "4:05.",
        "4:05.1234", "4:05.x", "4.5:05", " 4:05", "99999:00", "4:05,,"}) {
    const auto time = parse_clock(text);
    ASSERT_FALSE(time) << text;
    EXPECT_EQ(time.error().code, ErrorCode::Invalid);
    EXPECT_EQ(time.error().message,
              "'" + std::string(text) + "' is not a time: write m:ss or h:mm:ss, e.g. 8:05 or 1:02:05");
  }
}

}  // namespace
}  // namespace repwright::base
