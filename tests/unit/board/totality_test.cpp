#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "board/read.hpp"
#include "support/board_of_json.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::board {
namespace {

bool inside(const domain::Span& span, const std::string& text) {
  return span.begin <= span.end && span.end <= text.size() && span.line >= 1 && span.column >= 1;
}

std::size_t steps_in(const std::vector<domain::Block>& blocks) {
  std::size_t steps = 0;
  for (const domain::Block& block : blocks) {
    steps += block.items.size() + block.penalty.size() + block.after_fail.size();
    for (const auto& slot : block.slots) steps += slot.size();
    if (block.interrupt) steps += block.interrupt->items.size();
    steps += steps_in(block.children);
  }
  return steps;
}

/// Spans lie inside the text, and there is one for each step and block.
void check_spans(const std::string& text) {
  const Reading reading = read(text, test::shipped_catalogue(), {});
  for (const auto* spans : {&reading.steps, &reading.blocks, &reading.rules})
    for (const domain::Span& span : *spans) ASSERT_TRUE(inside(span, text)) << text;
  for (const domain::Diagnostic& diagnostic : reading.diagnostics)
    ASSERT_TRUE(inside(diagnostic.span, text)) << diagnostic.name << ": " << text;
  ASSERT_EQ(reading.steps.size(), steps_in(reading.board.blocks)) << text;
}

/// Every line with something on it was read as a step, a rule or words, or is named in a remark.
std::vector<std::string> lost_lines(const std::string& text) {
  const Reading reading = read(text, test::shipped_catalogue(), {});
  std::vector<bool> touched(text.size() + 1, false);
  const auto touch = [&](const domain::Span& span) {
    std::fill(touched.begin() + static_cast<std::ptrdiff_t>(span.begin),
              touched.begin() + static_cast<std::ptrdiff_t>(span.end), true);
  };
  std::ranges::for_each(reading.steps, touch);
  std::ranges::for_each(reading.blocks, touch);
  std::ranges::for_each(reading.rules, touch);
  for (const domain::Diagnostic& diagnostic : reading.diagnostics) touch(diagnostic.span);
  std::vector<std::string> lost;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    const std::string line = text.substr(at, end - at);
    const bool says = std::ranges::any_of(line, [](unsigned char c) { return std::isalnum(c) != 0; });
    const bool seen = std::find(touched.begin() + static_cast<std::ptrdiff_t>(at),
                                touched.begin() + static_cast<std::ptrdiff_t>(end),
                                true) != touched.begin() + static_cast<std::ptrdiff_t>(end);
    if (says && !seen) lost.push_back(line);
    at = end + 1;
  }
  return lost;
}

TEST(Reading, LosesNoLineOfTheSeedBoards) {
  for (const test::Example& example : test::examples())
    EXPECT_EQ(lost_lines(example.text), std::vector<std::string>{}) << example.text;
}

TEST(Reading, LosesNoLineWithALetterAlone) {
  EXPECT_EQ(lost_lines("10 DB lunges each leg 2x12/8\nB8\nBack squat 5x3\nA\n"), std::vector<std::string>{});
}

TEST(Reading, GivesATreeForNoTextAtAll) {
  for (const char* text : {"", "\n", " \t\r\n", "\xEF\xBB\xBF", "\xFF\xFE", "((((", "....", "\"", "[", "-"})
    check_spans(text);
}

/// Lines of seed boards in any order, with bytes changed, left out and doubled.
rc::Gen<std::string> muddled_board() {
  return rc::gen::exec([] {
    std::vector<std::string> lines;
    const auto count = *rc::gen::inRange(1, 12);
    for (int i = 0; i < count; ++i) {
      const std::string& board = (*rc::gen::elementOf(test::examples())).text;
      const auto at = *rc::gen::inRange<std::size_t>(0, board.size());
      const std::size_t begin = board.rfind('\n', at) == std::string::npos ? 0 : board.rfind('\n', at) + 1;
      lines.push_back(board.substr(begin, board.find('\n', at) - begin));
    }
    std::string text;
    for (const std::string& line : lines) text += line + "\n";
    const auto changes = *rc::gen::inRange(0, 6);
    for (int i = 0; i < changes; ++i) {
      const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
      const auto what = *rc::gen::inRange(0, 3);
      if (what == 0) text[at] = static_cast<char>(*rc::gen::inRange(0, 256));
      if (what == 1) text.erase(at, 1);
      if (what == 2) text.insert(at, text, at, 3);
      if (text.empty()) text = "\n";
    }
    return text;
  });
}

RC_GTEST_PROP(Reading, KeepsItsSpansInsideAnyText, ()) {
  check_spans(*muddled_board());
}
RC_GTEST_PROP(Reading, LosesNoLineOfAnyText, ()) {
  const std::string text = *muddled_board();
  RC_ASSERT(lost_lines(text).empty());
}
RC_GTEST_PROP(Reading, TakesAnyBytes, (const std::string& text)) {
  check_spans(text);
}

std::string repeated(const std::string& unit, std::size_t bytes) {
  std::string text;
  while (text.size() < bytes) text += unit;
  return text;
}

TEST(Reading, TakesAWordOfTheNotationForTheNameOfALift) {
  const Reading reading = read("RD 4x8 @3-1-1-0, RPE 7", test::shipped_catalogue(), {});
  ASSERT_EQ(reading.steps.size(), 1u);
  check_spans("6 x 400m @ 5k pace, 1:1 %est\nRD 4x8 @3-1-1-0, RPE 7, superset with\n");
}

TEST(Reading, TakesAMegabyteOfChalk) {
  const Reading reading = read(repeated("3 RFT\n10 burpees\n\n", 1'000'000), test::shipped_catalogue(), {});
  EXPECT_GT(reading.steps.size(), 50'000u);
}

TEST(Reading, TakesEndlessLinesOfAnything) {
  for (const char* unit : {"10 burpees ", "xyz ", "1/", "(", "10 unheard things, ", "A1 ", "every 2 min ",
                           "3-", "\n5x5 @ 75%"}) {
    const Reading reading = read(repeated(unit, 50'000), test::shipped_catalogue(), {});
    EXPECT_FALSE(reading.diagnostics.empty() && reading.steps.empty() && reading.rules.empty()) << unit;
  }
}

}  // namespace
}  // namespace repwright::board
