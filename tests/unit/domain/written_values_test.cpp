#include "domain/written_values.hpp"

#include <gtest/gtest.h>

namespace repwright::domain {
namespace {

using base::second;

TEST(ReadNumber, TakesPointOrCommaAndNothingElse) {
  EXPECT_EQ(read_number("7.5"), 7.5);
  EXPECT_EQ(read_number("7,5"), 7.5);
  EXPECT_EQ(read_number("-3"), -3.0);
  for (const char* bad :
       {"", "-", "7.", ".5", "1e5", "inf", "nan", "1.000,5", "7 5", "+3", "0x1", "1234567890123456789012345"})
    EXPECT_EQ(read_number(bad), std::nullopt) << bad;
}

TEST(WriteNumber, IsTheShortestThatReadsBack) {
  EXPECT_EQ(write_number(61), "61");
  EXPECT_EQ(write_number(7.5), "7.5");
  EXPECT_EQ(write_number(0.1 + 0.2), "0.30000000000000004");
}

TEST(ReadClock, TakesMinutesHoursAndDecimals) {
  EXPECT_EQ(read_clock("1:32"), 92 * second);
  EXPECT_EQ(read_clock("1:32.5"), 92.5 * second);
  EXPECT_EQ(read_clock("1:32,5"), 92.5 * second);
  EXPECT_EQ(read_clock("75:00"), 4500 * second);
  EXPECT_EQ(read_clock("1:02:03"), 3723 * second);
  for (const char* bad :
       {"", ":", "1:", ":30", "0:75", "1:5", "1:62:03", "1:2:03", "1:02:03:04", "a:30", "-1:30", "92"})
    EXPECT_EQ(read_clock(bad), std::nullopt) << bad;
}

TEST(WriteClock, ShowsHoursAndDecimalsOnlyWhereNeeded) {
  EXPECT_EQ(write_clock(92 * second), "1:32");
  EXPECT_EQ(write_clock(5 * second), "0:05");
  EXPECT_EQ(write_clock(92.25 * second), "1:32.25");
  EXPECT_EQ(write_clock(3723 * second), "1:02:03");
}

TEST(ReadDate, TakesDaysThatExist) {
  using namespace std::chrono_literals;
  EXPECT_EQ(read_date("2027-05-31"), 2027y / 5 / 31);
  EXPECT_EQ(write_date(2027y / 5 / 3), "2027-05-03");
  for (const char* bad : {"", "2027-02-29", "2027-13-01", "31.05.2027", "2027-5-31", "2027/05/31"})
    EXPECT_EQ(read_date(bad), std::nullopt) << bad;
}

TEST(ReadTimeOfDay, TakesTwentyFourHours) {
  EXPECT_EQ(read_time_of_day("09:05"), 545);
  EXPECT_EQ(read_time_of_day("9:05"), 545);
  EXPECT_EQ(write_time_of_day(545), "09:05");
  for (const char* bad : {"", "24:00", "9:5", "9", "09:60", "009:00"})
    EXPECT_EQ(read_time_of_day(bad), std::nullopt) << bad;
}

TEST(Trimmed, DropsBlanksAndHardSpaces) {
  EXPECT_EQ(trimmed(" \t a b\u00A0\r\n"), "a b");
  EXPECT_EQ(trimmed("  "), "");
}

}  // namespace
}  // namespace repwright::domain
