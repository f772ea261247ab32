#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <utility>

#include "golden_case.hpp"
#include "support/schema.hpp"
#include "support/source_dir.hpp"

/// What the program prints as JSON is what docs/*.schema.json say, checked by a validator outside the
/// project.
namespace repwright::test {
namespace {

using nlohmann::json;

/// The demo gym's classes, each with its board.
constexpr std::array classes{std::pair{"sat-24", "sat-two-clocks"}, std::pair{"tue-pairs-13", "tue-pairs"},
                             std::pair{"wed-19-for-12", "wed-every-three"},
                             std::pair{"wed-morning-9", "wed-stations"}};

/// What the program prints for each class of the demo gym, COMMAND BOARD of the gym and the rest.
json printed(const std::string& command, const std::string& rest) {
  GoldenCase golden;
  golden.runs.push_back({.command = "repwright demo gym", .out = "", .err = ""});
  for (const auto& [name, board] : classes) {
    std::string line = "repwright " + command + " gym/boards/" + board + ".txt --gym gym --json" + rest;
    line += std::string(" --class gym/classes/") + name + ".json";
    golden.runs.push_back({.command = std::move(line), .out = "", .err = ""});
  }
  const GoldenCase now = run_case(golden, REPWRIGHT_PROGRAM);
  json documents = json::array();
  for (std::size_t i = 1; i < now.runs.size(); ++i) documents.push_back(json::parse(now.runs[i].out));
  return documents;
}

void expect_valid(const std::string& schema, const json& documents) {
  ASSERT_EQ(documents.size(), classes.size());
  const Verdict verdict = validate(schema, documents);
  if (verdict.exit_code == 77) GTEST_SKIP() << verdict.said;
  EXPECT_EQ(verdict.exit_code, 0) << verdict.said;
}

TEST(Schemas, HoldForTheReadingOfEveryBoardOfTheDemo) {
  GoldenCase golden;
  for (const auto& board : std::filesystem::directory_iterator(source_dir() / "data/demo/boards"))
    golden.runs.push_back(
        {.command = "repwright read '" + board.path().string() + "' --json", .out = "", .err = ""});
  json documents = json::array();
  for (const GoldenRun& run : run_case(golden, REPWRIGHT_PROGRAM).runs)
    documents.push_back(json::parse(run.out));
  ASSERT_GE(documents.size(), classes.size());
  const Verdict verdict = validate("reading.schema.json", documents);
  if (verdict.exit_code == 77) GTEST_SKIP() << verdict.said;
  EXPECT_EQ(verdict.exit_code, 0) << verdict.said;
}

TEST(Schemas, HoldForAllThatIsKeptOfEverybodyInTheDemo) {
  GoldenCase golden;
  golden.runs.push_back({.command = "repwright demo gym", .out = "", .err = ""});
  golden.runs.push_back({.command = "repwright import gym --to gym.db", .out = "", .err = ""});
  for (const char* person : {"a01", "a07", "a17", "a24"})
    for (const char* place : {"gym", "gym.db"})
      golden.runs.push_back(
          {.command = std::string("repwright export --person ") + person + " --gym " + place,
           .out = "",
           .err = ""});
  const GoldenCase now = run_case(golden, REPWRIGHT_PROGRAM);
  json documents = json::array();
  for (std::size_t i = 2; i < now.runs.size(); ++i) documents.push_back(json::parse(now.runs[i].out));
  const Verdict verdict = validate("person.schema.json", documents);
  if (verdict.exit_code == 77) GTEST_SKIP() << verdict.said;
  EXPECT_EQ(verdict.exit_code, 0) << verdict.said;
}

TEST(Schemas, HoldForTheRepairsOfTheDemo) {
  expect_valid("repairs.schema.json", printed("repairs", " --runs 40"));
}

TEST(Schemas, HoldForTheTimetablesOfTheDemo) {
  expect_valid("timetable.schema.json", printed("timetable", ""));
}

TEST(Schemas, HoldForTheWarmUpsOfTheDemo) {
  expect_valid("warm-up.schema.json", printed("warmup", ""));
}

TEST(Schemas, HoldForTheAwayVersionsOfTheDemo) {
  GoldenCase golden;
  for (const auto& board : std::filesystem::directory_iterator(source_dir() / "data/demo/boards"))
    golden.runs.push_back(
        {.command = "repwright away '" + board.path().string() + "' --quiet --json", .out = "", .err = ""});
  json documents = json::array();
  for (const GoldenRun& run : run_case(golden, REPWRIGHT_PROGRAM).runs)
    documents.push_back(json::parse(run.out));
  const Verdict verdict = validate("away.schema.json", documents);
  if (verdict.exit_code == 77) GTEST_SKIP() << verdict.said;
  EXPECT_EQ(verdict.exit_code, 0) << verdict.said;
}

TEST(Schemas, HoldForTheFitsOfTheDemo) {
  expect_valid("fit.schema.json", printed("fit", " --runs 20"));
}

TEST(Schemas, HoldForThePairsOfTheDemo) {
  expect_valid("pairs.schema.json", printed("pairs", ""));
}

TEST(Schemas, HoldForTheRehearsalsOfTheDemo) {
  const json documents = printed("rehearse", " --runs 5");
  expect_valid("rehearsal.schema.json", documents);
  for (const json& document : documents) EXPECT_FALSE(document.contains("draws"));
}

TEST(Schemas, HoldForTheRehearsalsOfTheDemoWithDraws) {
  const json documents = printed("rehearse", " --runs 2 --draws");
  expect_valid("rehearsal.schema.json", documents);
  for (const json& document : documents) EXPECT_FALSE(document.at("draws").empty());
}

TEST(Schemas, HoldForTheReasonsOfTheDemo) {
  const json documents = printed("rehearse", " --runs 60 --why a18");
  expect_valid("rehearsal.schema.json", documents);
  for (const json& document : documents) EXPECT_FALSE(document.at("why").at("pieces").empty());
}

TEST(Schemas, HoldForTheTestsThatWouldTellMost) {
  GoldenCase golden;
  golden.runs.push_back({.command = "repwright demo gym", .out = "", .err = ""});
  for (const char* board : {"everyday-twelve", "everyday-two-k", "everyday-trunk", "sat-two-clocks"})
    golden.runs.push_back({.command = std::string("repwright learn --gym gym --json --next a03 ") + board,
                           .out = "",
                           .err = ""});
  const GoldenCase now = run_case(golden, REPWRIGHT_PROGRAM);
  json documents = json::array();
  for (std::size_t i = 1; i < now.runs.size(); ++i) documents.push_back(json::parse(now.runs[i].out));
  expect_valid("tests.schema.json", documents);
}

TEST(Schemas, RefuseWhatTheProgramNeverPrints) {
  json document = printed("timetable", "").at(0);
  document["boxes"][0]["kind"] = "party";
  const Verdict verdict = validate("timetable.schema.json", json::array({document}));
  if (verdict.exit_code == 77) GTEST_SKIP() << verdict.said;
  EXPECT_NE(verdict.exit_code, 0);
}

}  // namespace
}  // namespace repwright::test
