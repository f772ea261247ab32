#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "api/reading_json.hpp"
#include "support/board_of_json.hpp"
#include "support/schema.hpp"

namespace repwright {
namespace {

using nlohmann::json;

using test::Verdict;

Verdict validate(const json& documents) {
  return test::validate("reading.schema.json", documents);
}

json document_of(const json& blocks) {
  board::Reading reading;
  reading.board = test::board_of_json(blocks);
  reading.steps = {{.begin = 6, .end = 16, .line = 2, .column = 1}};
  reading.rules = {{.begin = 0, .end = 5, .line = 1, .column = 1}};
  reading.diagnostics = {
      {"tier-order", domain::Severity::Note, "first load for m", "a house rule", {}, {"24 for m, 16 for f"}}};
  const std::vector<std::string> sentences{"One sentence."};
  return json::parse(api::reading_json(reading, "5 RFT\n10 burpees", sentences));
}

TEST(ReadingSchema, HoldsForEveryExample) {
  json documents = json::array();
  for (const test::Example& example : test::examples())
    documents.push_back(document_of(example.expect["blocks"]));
  documents.push_back(document_of(json::array()));
  const Verdict verdict = validate(documents);
  if (verdict.exit_code == 77) GTEST_SKIP() << verdict.said;
  EXPECT_EQ(verdict.exit_code, 0) << verdict.said;
}

TEST(ReadingSchema, RefusesWhatTheVocabularyDoesNotAllow) {
  const json good = document_of(test::examples()[0].expect["blocks"]);
  const auto refused = [&](const char* pointer, json value, const std::string& name) {
    json bad = good;
    bad[json::json_pointer(pointer)] = std::move(value);
    const Verdict verdict = validate(json::array({bad}));
    EXPECT_NE(verdict.exit_code, 0) << name;
    return verdict.exit_code == 77;
  };
  if (refused("/blocks/0/kind", "sprint", "kind")) GTEST_SKIP() << "python3-jsonschema is not installed";
  refused("/blocks/0/items/0/unit", "km", "unit");
  refused("/blocks/0/items/1/load_kg", 24, "naked-load");
  refused("/blocks/0/items/1/free_text", "swings", "known-movement-with-words");
  refused("/blocks/0/slots", json::array({json::array()}), "two-holders");
  refused("/blocks/0/sorce", "time", "unknown-field");
  refused("/fixed_seconds", 0, "zero-length");
  refused("/understood/0/as", "guess", "as");
  refused("/diagnostics/0/severity", "fatal", "severity");
}

}  // namespace
}  // namespace repwright
