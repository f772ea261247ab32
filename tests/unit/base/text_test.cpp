#include "base/text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright::base {
namespace {

using testing::ElementsAre;

TEST(Trim, TakesBlanksFromBothEndsOnly) {
  EXPECT_EQ(trim(" \t pull up\r\n"), "pull up");
  EXPECT_EQ(trim("run"), "run");
  EXPECT_EQ(trim(" \n "), "");
  EXPECT_EQ(trim(""), "");
}

TEST(Split, KeepsEmptyParts) {
  EXPECT_THAT(split("a,b", ','), ElementsAre("a", "b"));
  EXPECT_THAT(split(",a,", ','), ElementsAre("", "a", ""));
  EXPECT_THAT(split("", ','), ElementsAre(""));
}

TEST(Lower, ChangesAsciiCapitalsOnly) {
  EXPECT_EQ(lower("Run ÄZ@[`{9"), "run Äz@[`{9");
}

TEST(ParseDigits, TakesOneToNineDigitsAndNothingElse) {
  EXPECT_EQ(parse_digits("007"), 7);
  EXPECT_EQ(parse_digits("999999999"), 999999999);
  for (const char* text : {"", "1234567890", "-1", "+1", " 1", "1 ", "1.0", "x"}) {
    EXPECT_EQ(parse_digits(text), std::nullopt) << text;
  }
}

TEST(Padded, FillsUpWithZerosAndNeverCuts) {
  EXPECT_EQ(padded(5, 2), "05");
  EXPECT_EQ(padded(0, 1), "0");
  EXPECT_EQ(padded(123, 2), "123");
}

// kitten/sitting (3) and Saturday/Sunday (3) are the usual worked examples of V. I. Levenshtein's distance
// (Soviet Physics Doklady 10 (1966) 707-710); ca/abc tells optimal string alignment (3) from the
// unrestricted distance (2), in which a swapped pair may be touched again.
TEST(EditDistance, GivesTheUsualWorkedExamples) {
  EXPECT_EQ(edit_distance("kitten", "sitting", 9), 3);
  EXPECT_EQ(edit_distance("saturday", "sunday", 9), 3);
  EXPECT_EQ(edit_distance("ca", "abc", 9), 3);
}

TEST(EditDistance, CountsASwapOfNeighboursOnce) {
  EXPECT_EQ(edit_distance("burpee", "brupee", 2), 1);
  EXPECT_EQ(edit_distance("thruster", "thurster", 2), 1);
}

TEST(EditDistance, CountsCharactersNotBytes) {
  EXPECT_EQ(edit_distance("über", "uber", 3), 1);
}

TEST(EditDistance, StopsAtItsLimit) {
  EXPECT_EQ(edit_distance("kitten", "sitting", 2), 3);
  EXPECT_EQ(edit_distance("row", "overhead squat", 2), 3);
  EXPECT_EQ(edit_distance("abcdef", "uvwxyz", 1), 2);
  EXPECT_EQ(edit_distance("run", "run", 0), 0);
  EXPECT_EQ(edit_distance("", "ab", 2), 2);
}

}  // namespace
}  // namespace repwright::base
