#include "base/utf8.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace repwright::base {
namespace {

/// The text with one `?` for each U+FFFD, so that an expectation can be read.
std::string repaired(std::string_view text) {
  std::string shown;
  for (const char32_t point : code_points(repair_utf8(text))) {
    shown += point == 0xFFFD ? '?' : static_cast<char>(point);
  }
  return shown;
}

// The Unicode Standard 15.0, section 3.9, tables 3-8 to 3-11: one U+FFFD for each maximal subpart.
TEST(Utf8, RepairsTheExamplesOfTheUnicodeStandard) {
  EXPECT_EQ(repaired("\xC0\xAF\xE0\x80\xBF\xF0\x81\x82\x41"), "????????A");  // overlong forms
  EXPECT_EQ(repaired("\xED\xA0\x80\xED\xBF\xBF\xED\xAF\x41"), "????????A");  // surrogates
  EXPECT_EQ(repaired("\xF4\x91\x92\x93\xFF\x41\x80\xBF\x42"), "?????A??B");  // beyond U+10FFFF, stray bytes
  EXPECT_EQ(repaired("\xE1\x80\xE2\xF0\x91\x92\xF1\xBF\x41"), "????A");      // cut short
}

// The same, table 3-6 with the ends of each row of table 3-7.
TEST(Utf8, AcceptsTheFirstAndLastOfEachLength) {
  EXPECT_EQ(code_points("\x7F\xC2\x80\xDF\xBF"), (std::u32string{0x7F, 0x80, 0x7FF}));
  EXPECT_EQ(code_points("\xE0\xA0\x80\xED\x9F\xBF\xEE\x80\x80\xEF\xBF\xBF"),
            (std::u32string{0x800, 0xD7FF, 0xE000, 0xFFFF}));
  EXPECT_EQ(code_points("\xF0\x90\x80\x80\xF4\x8F\xBF\xBF"), (std::u32string{0x10000, 0x10FFFF}));
  EXPECT_EQ(code_points(std::string_view("\0", 1)), std::u32string(1, U'\0'));
}

TEST(Utf8, TellsValidFromInvalid) {
  EXPECT_TRUE(is_valid_utf8(""));
  EXPECT_TRUE(is_valid_utf8("Klimmzüge × 5 🏋"));
  EXPECT_FALSE(is_valid_utf8("Klimmz\xFCge"));
  EXPECT_FALSE(is_valid_utf8("\xF0\x9F\x8F"));
}

TEST(Utf8, LeavesValidTextAlone) {
  EXPECT_EQ(repair_utf8("3×10 Rudern\n"), "3×10 Rudern\n");
}

TEST(Utf8, CountsCharacters) {
  EXPECT_EQ(utf8_length(""), 0U);
  EXPECT_EQ(utf8_length("3×10"), 4U);
  EXPECT_EQ(utf8_length("\xE1\x80\xE2"), 2U);
}

TEST(Utf8, CountsTheCharactersThatBeginBeforeAByteOffset) {
  constexpr std::string_view text = "3×10";  // × takes bytes 1 and 2
  EXPECT_EQ(count_characters(text, 0), 0U);
  EXPECT_EQ(count_characters(text, 1), 1U);
  EXPECT_EQ(count_characters(text, 2), 2U);
  EXPECT_EQ(count_characters(text, 3), 2U);
  EXPECT_EQ(count_characters(text, 5), 4U);
  EXPECT_EQ(count_characters(text, 99), 4U);
}

}  // namespace
}  // namespace repwright::base
