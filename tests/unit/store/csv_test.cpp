#include "store/csv.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright::store {
namespace {

using Cells = std::vector<std::string>;

CsvTable read(std::string_view bytes) {
  Problems problems;
  auto table = read_csv(bytes, "a.csv", problems);
  EXPECT_TRUE(problems.empty());
  return table.value_or(CsvTable{});
}

std::string complaint(std::string_view bytes) {
  Problems problems;
  read_csv(bytes, "a.csv", problems);
  return problems.empty() ? std::string() : problems.error().message;
}

TEST(Csv, ReadsWhatSpreadsheetsOfAnyCountryWrite) {
  for (const char* text : {"a,b\n1,2\n", "a;b\r\n1;2",
                           "\xEF\xBB\xBF"
                           "a\tb\r1\t2\r",
                           " a , b \n\n 1 , 2 \n\n"}) {
    const CsvTable table = read(text);
    EXPECT_EQ(table.header, (Cells{"a", "b"})) << text;
    ASSERT_EQ(table.rows.size(), 1U) << text;
    EXPECT_EQ(table.rows[0].cells, (Cells{"1", "2"})) << text;
  }
}

TEST(Csv, ReadsQuotedCellsWithSeparatorsQuotesAndLineEnds) {
  const CsvTable table = read("a,b\n\"x, \"\"y\"\"\nz\",2\n3,4\n");
  EXPECT_EQ(table.rows[0].cells[0], "x, \"y\"\nz");
  EXPECT_EQ(table.rows[1].line, 4);
}

TEST(Csv, FillsShortRowsAndIgnoresEmptyCellsBeyondTheHeader) {
  const CsvTable table = read("a,b,c\n1\n1,2,3,,\n");
  EXPECT_EQ(table.rows[0].cells, (Cells{"1", "", ""}));
  EXPECT_EQ(table.rows[1].cells, (Cells{"1", "2", "3"}));
}

TEST(Csv, NamesWhatCannotBeRead) {
  EXPECT_EQ(complaint("a,b\n1,\"2\n3,4"), "a.csv:2: a quote begins here and never ends");
  EXPECT_EQ(complaint("a,b\n\"1\"x,2\n"), "a.csv:2: text stands after the closing quote of a cell");
  EXPECT_EQ(complaint("a,b\n1,2,3\n"), "a.csv:2: has 3 cells, expected at most the 2 of the header");
  EXPECT_EQ(complaint("a\nJos\xE9\n"), "a.csv:2: is not UTF-8, expected the file saved as 'CSV UTF-8'");
  EXPECT_EQ(complaint(" \n \n"), "a.csv: is empty, expected a header row");
}

TEST(Csv, DropsHardSpacesAroundCells) {
  EXPECT_EQ(read("a,b\n\u00A0 1\u00A0,\"\u00A02 \"\n").rows[0].cells, (Cells{"1", "2"}));
}

TEST(Csv, WritesWhatItReads) {
  const std::vector<Cells> rows{{"a", "b"}, {"x,y", "1\"2"}, {"", "line\nend;"}};
  const CsvTable table = read(write_csv(rows));
  EXPECT_EQ(table.header, rows[0]);
  EXPECT_EQ(table.rows[0].cells, rows[1]);
  EXPECT_EQ(table.rows[1].cells, rows[2]);
}

}  // namespace
}  // namespace repwright::store
