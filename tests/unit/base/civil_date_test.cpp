#include "base/civil_date.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <string>

#include "base/require.hpp"

namespace repwright::base {
namespace {

constexpr std::chrono::year_month_day day(int year, unsigned month, unsigned of_month) {
  return {std::chrono::year(year), std::chrono::month(month), std::chrono::day(of_month)};
}

TEST(Date, IsReadAndWrittenAsIso8601) {
  EXPECT_EQ(parse_date("2027-05-15").value(), day(2027, 5, 15));
  EXPECT_EQ(format_date(day(2027, 5, 15)), "2027-05-15");
  EXPECT_EQ(format_date(day(33, 1, 2)), "0033-01-02");
}

TEST(Date, KnowsLeapYearsOfTheGregorianCalendar) {
  EXPECT_TRUE(parse_date("2028-02-29"));
  EXPECT_TRUE(parse_date("2000-02-29"));
  EXPECT_FALSE(parse_date("2027-02-29"));
  EXPECT_FALSE(parse_date("2100-02-29"));
}

TEST(Date, RefusesOtherShapesInWordsForTheWriter) {
  for (const char* text : {"", "2027-5-15", "20270515", "15.05.2027", "2027-05-15 ", "2027/05/15",
                           "2027-0x-15", "-027-05-15", "2027-+5-15"}) {
    const auto date = parse_date(text);
    ASSERT_FALSE(date) << text;
    EXPECT_EQ(date.error().code, ErrorCode::Invalid);
    EXPECT_EQ(date.error().message,
              "'" + std::string(text) + "' is not a date: write year-month-day, e.g. 2027-05-15");
  }
  EXPECT_EQ(parse_date("2027-13-01").error().message, "there is no day '2027-13-01'");
}

// ISO 8601:2019 and ECMA-262 agree on the proleptic Gregorian calendar; 1 January 1970 was a Thursday
// (POSIX.1-2017, section 4.16), 14 September 1752 one too (Calendar (New Style) Act 1750).
TEST(Weekday, HasTheNameOfTheCalendar) {
  EXPECT_EQ(weekday_name(day(1970, 1, 1)), "thu");
  EXPECT_EQ(weekday_name(day(1752, 9, 14)), "thu");
  EXPECT_EQ(weekday_name(day(2027, 5, 15)), "sat");
  EXPECT_EQ(weekday_name(day(2027, 5, 16)), "sun");
  EXPECT_EQ(weekday_name(day(2027, 5, 17)), "mon");
}

TEST(DaysBetween, CountsForwardsAndBackwards) {
  EXPECT_EQ(days_between(day(1970, 1, 1), day(2000, 1, 1)),
            10957);  // POSIX.1-2017, 4.16: 946684800 s / 86400
  EXPECT_EQ(days_between(day(2027, 5, 15), day(2027, 5, 15)), 0);
  EXPECT_EQ(days_between(day(2028, 3, 1), day(2028, 2, 28)), -2);
}

TEST(TimeOfDay, IsReadAndWrittenOnThe24HourClock) {
  EXPECT_EQ(parse_time_of_day("00:00").value(), 0);
  EXPECT_EQ(parse_time_of_day("06:15").value(), 375);
  EXPECT_EQ(parse_time_of_day("23:59").value(), 1439);
  EXPECT_EQ(format_time_of_day(0), "00:00");
  EXPECT_EQ(format_time_of_day(375), "06:15");
  EXPECT_EQ(format_time_of_day(1439), "23:59");
}

TEST(TimeOfDay, RefusesOtherShapes) {
  for (const char* text : {"", "6:15", "24:00", "12:60", "12.30", "12:3a", "12:30 ", "-1:00"}) {
    EXPECT_FALSE(parse_time_of_day(text)) << text;
  }
}

TEST(Date, HoldsItsCallersToTheirPromises) {
  EXPECT_THROW(format_date(day(2027, 2, 30)), Bug);
  EXPECT_THROW(weekday_name(day(2027, 2, 30)), Bug);
  EXPECT_THROW(days_between(day(2027, 2, 30), day(2027, 3, 1)), Bug);
  EXPECT_THROW(format_time_of_day(1440), Bug);
  EXPECT_THROW(format_time_of_day(-1), Bug);
}

}  // namespace
}  // namespace repwright::base
