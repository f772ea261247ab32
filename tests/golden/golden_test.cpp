#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <fstream>

#include "golden_case.hpp"
#include "support/files.hpp"

namespace repwright::test {
namespace {

class Golden : public ::testing::TestWithParam<std::string> {};

TEST_P(Golden, PrintsWhatTheCaseSays) {
  const std::string path = case_path(GetParam());
  const std::string expected = text_of_file(path);
  const std::string actual = write_case(run_case(parse_case(expected), REPWRIGHT_PROGRAM));
  if (std::getenv("UPDATE_GOLDEN") != nullptr) {
    std::ofstream(path, std::ios::binary) << actual;
    return;
  }
  EXPECT_EQ(actual, expected) << "UPDATE_GOLDEN=1 writes the case anew: read the difference first";
}

INSTANTIATE_TEST_SUITE_P(Cases, Golden, ::testing::ValuesIn(case_files()), [](const auto& one) {
  std::string name = one.param.substr(0, one.param.rfind('.'));
  std::ranges::replace_if(name, [](unsigned char c) { return std::isalnum(c) == 0; }, '_');
  return name;
});
GTEST_ALLOW_UNINSTANTIATED_PARAMETERIZED_TEST(Golden);

TEST(GoldenCase, IsWrittenAsItWasRead) {
  const std::string text =
      "What it shows.\n--- file a/b.txt\nhello\n\nworld\n$ repwright read a/b.txt\n--- stdout\n1. "
      "Hello.\n--- stderr\noh\n"
      "--- exit 1\n$ repwright --help\n--- stdout\nhelp\n";
  const GoldenCase golden = parse_case(text);
  EXPECT_EQ(write_case(golden), text);
  EXPECT_EQ(golden.files.at(0).text, "hello\n\nworld\n");
  ASSERT_EQ(golden.runs.size(), 2u);
  EXPECT_EQ(golden.runs[0].exit_code, 1);
  EXPECT_EQ(golden.runs[1].err, "");
}

TEST(GoldenCase, RefusesWhatTheFormatDoesNotHave) {
  EXPECT_THROW(parse_case("--- stdout\nno command\n"), std::runtime_error);
  EXPECT_THROW(parse_case("$ rm -r x\n"), std::runtime_error);
  EXPECT_THROW(parse_case("$ repwright\nloose text\n"), std::runtime_error);
  EXPECT_THROW(parse_case("$ repwright\n--- stdfoo\n"), std::runtime_error);
}

TEST(GoldenCase, RunsInAFolderThatHoldsTheFilesAndNothingElse) {
  GoldenCase golden;
  golden.files = {{"in/word.txt", "hello\n"}};
  golden.runs = {{"repwright -c 'cat in/word.txt; ls; echo oh >&2; exit 3'", "", "", 0}};
  const GoldenCase now = run_case(golden, "/bin/sh");
  EXPECT_EQ(now.runs[0].out, "hello\nin\n");
  EXPECT_EQ(now.runs[0].err, "oh\n");
  EXPECT_EQ(now.runs[0].exit_code, 3);
  EXPECT_NE(write_case(now), write_case(golden));
}

}  // namespace
}  // namespace repwright::test
