#include <gtest/gtest.h>

#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <nlohmann/json.hpp>

#include "api/reading_json.hpp"
#include "support/board_of_json.hpp"
#include "support/files.hpp"
#include "support/source_dir.hpp"

namespace repwright {
namespace {

using nlohmann::json;

struct Verdict {
  int exit_code = 0;
  std::string said;
};

/// The verdict of a validator outside the project on all those documents (JSON Schema 2020-12).
Verdict validate(const json& documents, const std::string& name) {
  const std::string file = ::testing::TempDir() + "repwright-schema-" + name + ".json";
  std::ofstream(file) << documents.dump();
  const std::string root = test::source_dir().string();
  const std::string command = "/usr/bin/python3 '" + root + "/tests/support/validate_json.py' '" + root +
                              "/docs/reading.schema.json' '" + file + "' 2>&1";
  Verdict verdict;
  FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return {77, "no shell"};
  std::array<char, 4096> part{};
  while (const std::size_t got = std::fread(part.data(), 1, part.size(), pipe))
    verdict.said.append(part.data(), got);
  verdict.exit_code = WEXITSTATUS(pclose(pipe));
  std::remove(file.c_str());
  return verdict;
}

json document_of(const json& blocks) {
  const std::vector<domain::Diagnostic> diagnostics{
      {"tier-order", domain::Severity::Note, "first load for m", "a house rule", {}, {"24 for m, 16 for f"}}};
  const std::vector<std::string> sentences{"One sentence."};
  return json::parse(api::reading_json(test::board_of_json(blocks), sentences, diagnostics));
}

TEST(ReadingSchema, HoldsForEveryExample) {
  json documents = json::array();
  for (const test::Example& example : test::examples())
    documents.push_back(document_of(example.expect["blocks"]));
  documents.push_back(document_of(json::array()));
  const Verdict verdict = validate(documents, "examples");
  if (verdict.exit_code == 77) GTEST_SKIP() << verdict.said;
  EXPECT_EQ(verdict.exit_code, 0) << verdict.said;
}

TEST(ReadingSchema, RefusesWhatTheVocabularyDoesNotAllow) {
  const json good = document_of(test::examples()[0].expect["blocks"]);
  const auto refused = [&](const char* pointer, json value, const std::string& name) {
    json bad = good;
    bad[json::json_pointer(pointer)] = std::move(value);
    const Verdict verdict = validate(json::array({bad}), name);
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
  refused("/diagnostics/0/severity", "fatal", "severity");
}

}  // namespace
}  // namespace repwright
