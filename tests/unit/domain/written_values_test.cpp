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

TEST(ReadClock, StandsOnTheWholeMillisecond) {
  EXPECT_EQ(read_clock("1:32"), 92 * second);
  EXPECT_EQ(read_clock("1:02:03,7"), 3723.7 * second);
  EXPECT_EQ(read_clock("4:32.351"), 272.351 * second);
  EXPECT_EQ(read_clock("92"), std::nullopt);
}

TEST(WriteClock, ShowsHoursAndDecimalsOnlyWhereNeeded) {
  EXPECT_EQ(write_clock(92 * second), "1:32");
  EXPECT_EQ(write_clock(5 * second), "0:05");
  EXPECT_EQ(write_clock(92.25 * second), "1:32.25");
  EXPECT_EQ(write_clock(3723 * second), "1:02:03");
}

}  // namespace
}  // namespace repwright::domain
