#include "sheets/table.hpp"

#include <gtest/gtest.h>

#include "sheets/columns.hpp"

namespace repwright::sheets {
namespace {

// Unicode Standard Annex #11, East Asian Width, revision 42: ideographs are wide, combining marks take no
// column.
TEST(Columns, CountWhatATerminalShows) {
  EXPECT_EQ(columns_of("Ana"), 3u);
  EXPECT_EQ(columns_of("Ó Duinnín"), 9u);
  EXPECT_EQ(columns_of("藤井"), 4u);
  EXPECT_EQ(columns_of("e\u0301"), 1u);
  EXPECT_EQ(columns_of("\xFF"), 1u);
  EXPECT_EQ(columns_of(""), 0u);
}

TEST(TableText, KeepsColumnsInLineUnderWideNames) {
  const Table table{{{"", Align::Left}, {"score", Align::Right}, {"note", Align::Left}},
                    {{"藤井", "9:05", "late"}, {"Ana", "10:05", ""}}};
  EXPECT_EQ(table_text(table, 1), "       score  note\n 藤井   9:05  late\n Ana   10:05\n");
}

TEST(TableText, WrapsItsLastColumnAtThePage) {
  const std::string long_cell =
      "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen";
  const std::string text =
      table_text({{{"at", Align::Left}, {"what", Align::Left}}, {{"0:00", long_cell}}}, 0);
  EXPECT_EQ(text,
            "at    what\n0:00  one two three four five six seven eight nine ten eleven twelve thirteen\n"
            "      fourteen fifteen sixteen\n");
}

TEST(Wrapped, CountsWhatStandsBeforeTheText) {
  EXPECT_EQ(wrapped("- ", "aa bb cc", {.width = 7, .indent = 2}), "- aa bb\n  cc");
  EXPECT_EQ(wrapped("", "aa bb cc", {.width = 5, .indent = 0}), "aa bb\ncc");
}

TEST(Wrapped, LeavesALongWordWhole) {
  EXPECT_EQ(wrapped("", "a extraordinary b", {.width = 6, .indent = 1}), "a\n extraordinary\n b");
}

}  // namespace
}  // namespace repwright::sheets
