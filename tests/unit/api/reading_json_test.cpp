#include "api/reading_json.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "base/require.hpp"
#include "support/board_of_json.hpp"
#include "support/reading_compare.hpp"

namespace repwright {
namespace {

using api::blocks_json;
using domain::Block;
using domain::Board;
using domain::Item;
using nlohmann::json;
using test::differences;

std::string joined(const test::Differences& found) {
  std::string all;
  for (const std::string& each : found) all += each + "\n";
  return all;
}

/// A line of work whose fields the test sets.
Item line_of(std::string movement, domain::Amount amount) {
  Item item;
  item.movement = domain::MovementId{std::move(movement)};
  item.amount = std::move(amount);
  return item;
}

json one_item(const Item& item) {
  Block block;
  block.items = {item};
  Board board;
  board.blocks = {block};
  return blocks_json(board)[0]["items"][0];
}

TEST(ReadingJson, WritesEveryExampleInTheVocabularyOfTheReading) {
  ASSERT_EQ(test::examples().size(), 38u);
  for (const test::Example& example : test::examples()) {
    const json& expected = example.expect["blocks"];
    const json written = blocks_json(test::board_of_json(expected));
    EXPECT_EQ(joined(differences(expected, written)), "") << example.id;
  }
}

TEST(ReadingJson, WritesTheCarriedWords) {
  const json expected = json::parse(R"([
    {"kind": "part", "title": "Piece A", "duration_s": 1200, "children": [
      {"kind": "for_time", "rounds": 1, "cap_s": 600, "heats": 2, "score": "time", "vest_kg": 6, "quiet": true,
       "keep_place": true, "odd_start": "push-up",
       "intent": {"time_s": {"min": 600, "max": 840}, "rounds": {"min": 3}, "effort": {"min": 7, "max": 8},
                  "spare_s": 45},
       "items": [
         {"move": "pull-up", "qty": 9, "unit": "reps", "second_station": "ring-row"},
         {"move": "box-jump", "qty": 9, "unit": "reps", "height_cm": [60, 50]},
         {"move": "box-step-up", "qty": 9, "unit": "reps", "height_cm": 50.8},
         {"move": "bb-deadlift", "qty": 5, "unit": "reps", "load_rel": {"of": "last-week", "plus_kg": 2.5},
          "tempo": [3, 1, "X", 0]},
         {"move": "bb-back-squat", "qty": [5, 3], "unit": "reps", "load_pct": [60, 70], "load_of": "today-best"}]},
      {"kind": "intervals", "rounds": 3, "rest": {"kind": "free"}, "score": "times",
       "items": [{"move": "run", "qty": 400, "unit": "m", "effort": {"min": 6, "max": 7}}]}]}])");
  EXPECT_EQ(joined(differences(expected, blocks_json(test::board_of_json(expected)))), "");
}

TEST(ReadingJson, LeavesOutWhatTheBoardDoesNotSay) {
  const json written = one_item(line_of("push-up", 11.0));
  EXPECT_EQ(written, json::parse(R"({"move": "push-up", "qty": 11, "unit": "reps"})"));
}

TEST(ReadingJson, WritesWholeNumbersWithoutAPointAndPoundsUnrounded) {
  Item item = line_of("kb-swing", 10.0);
  item.loads = domain::Loads{{35 * base::pound, 24 * base::kilogram}};
  const json written = one_item(item);
  EXPECT_TRUE(written["qty"].is_number_integer());
  EXPECT_TRUE(written["load_kg"][1].is_number_integer());
  // 1 lb = 0.45359237 kg exactly: international yard and pound agreement, 1959.
  EXPECT_DOUBLE_EQ(written["load_kg"][0].get<double>(), 35 * 0.45359237);
}

TEST(ReadingJson, GivesFreeTextOnlyWhereTheMovementIsUnknown) {
  Item item;
  item.free_text = "target throws";
  const json written = one_item(item);
  EXPECT_TRUE(written["move"].is_null());
  EXPECT_EQ(written["free_text"], "target throws");
}

TEST(ReadingJson, RefusesAnAmountByLevelThatHasNoLevels) {
  EXPECT_THROW(one_item(line_of("run", domain::PerLevel{{500, 400}})), base::Bug);
}

TEST(ReadingJson, PutsTitleLengthSentencesAndDiagnosticsAroundTheBlocks) {
  Block rest;
  rest.kind = domain::BlockKind::Rest;
  rest.duration = 2 * base::minute;
  board::Reading reading;
  reading.board.title = "Thu";
  reading.board.blocks = {rest};
  const std::vector<std::string> sentences{"Rest 2 minutes."};
  reading.diagnostics = {{"unknown-movement",
                          domain::Severity::Warning,
                          "no movement is called `swngs`",
                          "did you mean swings?",
                          {.begin = 5, .end = 14, .line = 2, .column = 2},
                          {"swings"}},
                         {"tier-order", domain::Severity::Note, "first load for m", "", {}, {}}};
  const json document = json::parse(api::reading_json(reading, "Thu\n 9 × swngs", sentences));
  EXPECT_EQ(document["title"], "Thu");
  EXPECT_EQ(document["fixed_seconds"], 120);
  EXPECT_EQ(document["reading"], json::array({"Rest 2 minutes."}));
  EXPECT_EQ(document["diagnostics"][0],
            json::parse(R"({"line": 2, "column": 2, "length": 8, "severity": "warning",
    "text": "no movement is called `swngs`", "name": "unknown-movement", "hint": "did you mean swings?",
    "repairs": ["swings"]})"));
  EXPECT_FALSE(document["diagnostics"][1].contains("hint"));
}

TEST(ReadingJson, SaysWhereStepsAndRulesStandInTheOrderOfTheText) {
  board::Reading reading;
  reading.steps = {{.begin = 9, .end = 19, .line = 2, .column = 1}};
  reading.rules = {{.begin = 0, .end = 8, .line = 1, .column = 1}, {}, reading.steps[0]};
  const json document = json::parse(api::reading_json(reading, "AMRAP 12\n10 burpees", {}));
  EXPECT_EQ(document["understood"], json::parse(R"([{"line": 1, "column": 1, "length": 8, "as": "rule"},
                            {"line": 2, "column": 1, "length": 10, "as": "step"}])"));
}

TEST(ReadingJson, SaysThatNoLengthIsFixed) {
  const json document = json::parse(api::reading_json({}, "", {}));
  EXPECT_TRUE(document.at("fixed_seconds").is_null());
}

TEST(ReadingJson, StaysJsonWhenTheWordsAreNotUtf8) {
  board::Reading reading;
  reading.board.title = "Th\xFFu";
  EXPECT_EQ(json::parse(api::reading_json(reading, "Th\xFFu", {}))["title"], "Th\uFFFDu");
}

TEST(ReadingCompare, TakesNullForMissingAndLeavesOurOwnFieldsAlone) {
  const json expected = json::parse(R"([{"kind": "rest", "duration_s": 60, "text": null}])");
  const json actual = json::parse(R"([{"kind": "rest", "duration_s": 60.0, "title": "Water", "line": 3}])");
  EXPECT_EQ(joined(differences(expected, actual)), "");
}

TEST(ReadingCompare, ComparesWordsByTheirPresenceOnly) {
  const json expected = json::parse(R"([{"kind": "note", "text": "WU coach", "duration_s": 60}])");
  EXPECT_TRUE(
      differences(expected, json::parse(R"([{"kind": "note", "text": "coach", "duration_s": 60}])")).empty());
  EXPECT_EQ(differences(expected, json::parse(R"([{"kind": "note", "duration_s": 60}])")),
            (std::vector<std::string>{R"(blocks[0].text: missing, expected "WU coach")"}));
}

TEST(ReadingCompare, NamesWhatIsWrongMissingOrTooMuch) {
  const json expected = json::parse(R"([{"kind": "amrap", "duration_s": 780, "items": [{"move": "run"}]}])");
  const json actual = json::parse(
      R"([{"kind": "amrap", "duration_s": 600, "score": "time", "items": [{"move": "run"}, {"move": "walk"}]},
          {"kind": "rest"}])");
  EXPECT_EQ(joined(differences(expected, actual)),
            "blocks[0].duration_s: 600, expected 780\n"
            "blocks[0].items: one too many: {\"move\":\"walk\"}\n"
            "blocks[0].score: \"time\" where nothing is expected\n"
            "blocks: one too many: {\"kind\":\"rest\"}\n");
  EXPECT_EQ(joined(differences(expected, json::array())),
            "blocks[0]: missing, expected " + expected[0].dump() + "\n");
}

TEST(ReadingCompare, LetsARemarkStandOrFall) {
  const json expected = json::parse(R"([{"kind": "rest"}])");
  const json with_remark = json::parse(R"([{"kind": "note", "text": "gloves optional"}, {"kind": "rest"}])");
  EXPECT_TRUE(differences(expected, with_remark).empty());
}

}  // namespace
}  // namespace repwright
