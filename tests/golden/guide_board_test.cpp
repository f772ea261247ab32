#include <gtest/gtest.h>

#include "golden/golden_case.hpp"
#include "support/files.hpp"

/// Every board of docs/guide/board.md is read without an error or warning, and said back as the page says.
namespace repwright::test {
namespace {

struct Shown {
  std::string chalk;
  std::string says;
};

/// The text of the next fence of that name, which `at` is moved behind; empty when there is none.
std::string next_fence(const std::string& page, const std::string& name, std::size_t& at) {
  const std::string opening = "```" + name + "\n";
  const std::size_t open = page.find(opening, at);
  if (open == std::string::npos) return {};
  const std::size_t begin = open + opening.size();
  const std::size_t end = page.find("```", begin);
  at = end + 3;
  return page.substr(begin, end - begin);
}

std::vector<Shown> shown_boards() {
  const std::string page = text_of_file(source_dir() / "docs/guide/board.md");
  std::vector<Shown> boards;
  for (std::size_t at = 0;;) {
    Shown board;
    board.chalk = next_fence(page, "chalk", at);
    if (board.chalk.empty()) return boards;
    board.says = next_fence(page, "says", at);
    boards.push_back(std::move(board));
  }
}

/// The sentences, without the remarks below a blank line.
std::string before_remarks(const std::string& out) {
  const std::size_t blank = out.find("\n\n");
  return blank == std::string::npos ? out : out.substr(0, blank + 1);
}

TEST(GuideBoard, ShowsBoardsThatAreReadAsItSays) {
  const std::vector<Shown> boards = shown_boards();
  ASSERT_GE(boards.size(), 15u);
  for (const Shown& board : boards) {
    GoldenCase asked;
    asked.files = {{"board.txt", board.chalk}};
    asked.runs.emplace_back().command = "repwright read board.txt";
    const GoldenCase printed = run_case(std::move(asked), REPWRIGHT_PROGRAM);
    const GoldenRun& run = printed.runs.at(0);
    EXPECT_EQ(run.exit_code, 0) << board.chalk;
    EXPECT_EQ(before_remarks(run.out), board.says);
    EXPECT_EQ(run.out.find("warning:"), std::string::npos) << run.out;
  }
}

}  // namespace
}  // namespace repwright::test
