#include "app/briefing.hpp"

#include <gtest/gtest.h>

namespace repwright::app {
namespace {

TEST(Briefing, LastsAsLongAsItsWordsAtThatPace) {
  const std::vector<std::string> words(60, "two words");
  EXPECT_DOUBLE_EQ(briefing_length(words, 120).si(), 60);
  EXPECT_DOUBLE_EQ(briefing_length(words, 100).si(), 80);  // 72 s
  EXPECT_DOUBLE_EQ(briefing_length({}, 120).si(), 0);
}

}  // namespace
}  // namespace repwright::app
