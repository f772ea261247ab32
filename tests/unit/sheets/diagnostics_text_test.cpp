#include "sheets/diagnostics_text.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace repwright::sheets {
namespace {

domain::Diagnostic remark(std::size_t begin, std::size_t end, int line, int column) {
  return {.name = "unknown-movement",
          .severity = domain::Severity::Warning,
          .text = "no movement is called `x`",
          .hint = "did you mean `y`?",
          .span = {.begin = begin, .end = end, .line = line, .column = column},
          .repairs = {}};
}

std::string shown(std::string_view text, const domain::Diagnostic& diagnostic) {
  return diagnostics_text({"monday.txt", text}, std::vector{diagnostic});
}

TEST(DiagnosticsText, PutsACaretUnderTheFirstCharacterAndWavesUnderTheRest) {
  EXPECT_EQ(shown("3 RFT\n12 flurbs\n", remark(9, 15, 2, 4)),
            "monday.txt:2:4: warning: no movement is called `x` [unknown-movement]\n"
            "   2 | 12 flurbs\n"
            "     |    ^~~~~~\n"
            "     = hint: did you mean `y`?\n");
}

TEST(DiagnosticsText, KeepsTheCaretInPlaceBehindTabs) {
  EXPECT_EQ(shown("\t12 flurbs", remark(4, 10, 1, 5)),
            "monday.txt:1:5: warning: no movement is called `x` [unknown-movement]\n"
            "   1 |     12 flurbs\n"
            "     |        ^~~~~~\n"
            "     = hint: did you mean `y`?\n");
}

TEST(DiagnosticsText, CountsWideAndCombiningCharactersAsTheTerminalDoes) {
  // Two columns for each of the two wide characters, none for the combining acute accent.
  EXPECT_EQ(shown("\xE6\x87\x82\xE5\x8C\x96 e\xCC\x81 flurbs", remark(11, 17, 1, 6)),
            "monday.txt:1:6: warning: no movement is called `x` [unknown-movement]\n"
            "   1 | \xE6\x87\x82\xE5\x8C\x96 e\xCC\x81 flurbs\n"
            "     |        ^~~~~~\n"
            "     = hint: did you mean `y`?\n");
}

TEST(DiagnosticsText, PointsBehindTheLastCharacterOfALineThatLacksSomething) {
  EXPECT_EQ(shown("AMRAP\n10 burpees", remark(5, 5, 1, 6)),
            "monday.txt:1:6: warning: no movement is called `x` [unknown-movement]\n"
            "   1 | AMRAP\n"
            "     |      ^\n"
            "     = hint: did you mean `y`?\n");
}

TEST(DiagnosticsText, ShowsBytesThatAreNoTextAsReplacementCharacters) {
  const std::string text = shown(std::string_view("a\xFF\x01 b", 5), remark(4, 5, 1, 5));
  EXPECT_NE(text.find("   1 | a\xEF\xBF\xBD\xEF\xBF\xBD b\n"), std::string::npos) << text;
  EXPECT_NE(text.find("     |     ^\n"), std::string::npos) << text;
}

TEST(DiagnosticsText, SurvivesSpansAtTheEndOfAnEmptyText) {
  EXPECT_EQ(shown("", remark(0, 0, 1, 1)),
            "monday.txt:1:1: warning: no movement is called `x` [unknown-movement]\n"
            "   1 | \n"
            "     | ^\n"
            "     = hint: did you mean `y`?\n");
}

}  // namespace
}  // namespace repwright::sheets
