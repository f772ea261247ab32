#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "board/diagnostic_names.hpp"
#include "domain/rehearsal_names.hpp"
#include "golden_case.hpp"

/// What the golden cases together must show: every remark, every finding, every command and option.
namespace repwright::test {
namespace {

std::vector<GoldenRun> all_runs() {
  std::vector<GoldenRun> all;
  for (const std::string& file : case_files())
    for (GoldenRun& run : read_case(file).runs) all.push_back(std::move(run));
  return all;
}

std::string all_expected_text() {
  std::string all;
  for (const GoldenRun& run : all_runs()) all += run.out + run.err;
  return all;
}

/// What the program prints now.
std::string printed_by(const std::string& command) {
  GoldenCase golden;
  golden.runs = {{.command = command, .out = "", .err = ""}};
  return run_case(golden, REPWRIGHT_PROGRAM).runs.at(0).out;
}

std::set<std::string> found_in(const std::string& text, const std::regex& what) {
  std::set<std::string> found;
  for (std::sregex_iterator at(text.begin(), text.end(), what), end; at != end; ++at) found.insert((*at)[1]);
  return found;
}

std::set<std::string> commands() {
  const std::string help = printed_by("repwright --help");
  return found_in(help.substr(help.find("Subcommands:")), std::regex("\\n  ([a-z]+) "));
}

TEST(GoldenList, ShowsEveryRemarkThatReadingCanMake) {
  const std::string all = all_expected_text();
  for (const board::DiagnosticName& known : board::all_diagnostic_names) {
    const std::string shown = "[" + std::string(known.name) + "]";
    EXPECT_NE(all.find(shown), std::string::npos) << shown << " is in no golden case";
  }
}

TEST(GoldenList, ShowsEveryFindingOfARehearsal) {
  const std::string all = all_expected_text();
  for (const domain::FindingKind kind : domain::all_finding_kinds()) {
    const std::string name(domain::name_of(kind));
    const bool shown = all.find(name + "]") != std::string::npos ||
                       all.find("\"finding\": \"" + name + "\"") != std::string::npos;
    EXPECT_TRUE(shown) << name << " is in no golden case";
  }
}

TEST(GoldenList, HasACaseForEveryCommandAndOption) {
  const std::vector<GoldenRun> runs = all_runs();
  const std::set<std::string> known = commands();
  ASSERT_TRUE(known.contains("rehearse"));
  for (const std::string& command : known) {
    const auto options = found_in(printed_by("repwright " + command + " --help"), std::regex("(--[a-z-]+)"));
    ASSERT_TRUE(options.contains("--help")) << command;
    for (const std::string& option : options) {
      const std::regex used("repwright " + command + "( .*)? " + option + "( .*)?");
      EXPECT_TRUE(std::ranges::any_of(
          runs, [&](const GoldenRun& run) { return std::regex_match(run.command, used); }))
          << command << " " << option << " is in no golden case";
    }
  }
}

}  // namespace
}  // namespace repwright::test
