#include <gtest/gtest.h>

#include <sstream>

#include "golden/golden_case.hpp"
#include "support/files.hpp"

/// The README shows what the demo class prints, word for word; a line of '…' stands for lines left out.
namespace repwright::test {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(std::move(line));
  return lines;
}

/// What stands between the marks, without the four columns that make it a block.
std::vector<std::string> shown_sample() {
  const std::string readme = text_of_file(source_dir() / "README.md");
  const std::size_t begin = readme.find("<!-- sample output: begin -->\n");
  const std::size_t end = readme.find("<!-- sample output: end -->");
  if (begin == std::string::npos || end == std::string::npos) return {};
  std::vector<std::string> lines = lines_of(readme.substr(begin, end - begin));
  lines.erase(lines.begin());
  for (std::string& line : lines) line.erase(0, 4);
  return lines;
}

TEST(Readme, ShowsWhatTheDemoClassPrints) {
  GoldenCase demo;
  demo.runs.emplace_back().command = "repwright demo gym";
  demo.runs.emplace_back().command =
      "repwright rehearse gym/boards/sat-two-clocks.txt --gym gym --class gym/classes/sat-24.json";
  const std::vector<std::string> printed = lines_of(run_case(demo, REPWRIGHT_PROGRAM).runs.at(1).out);
  const std::vector<std::string> shown = shown_sample();
  ASSERT_GT(shown.size(), 40u);
  auto at = printed.begin();
  for (const std::string& line : shown) {
    if (line.empty() || line.find("…") != std::string::npos) continue;
    const auto found = std::find(at, printed.end(), line);
    ASSERT_NE(found, printed.end()) << "not printed, or not there: " << line;
    at = found + 1;
  }
}

}  // namespace
}  // namespace repwright::test
