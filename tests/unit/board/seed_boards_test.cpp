#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "support/board_of_json.hpp"
#include "support/reading_compare.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::board {
namespace {

class SeedBoards : public ::testing::TestWithParam<test::Example> {};

TEST_P(SeedBoards, AreReadAsAColleagueWould) {
  const test::Example& example = GetParam();
  const Reading reading = read(example.text, test::shipped_catalogue(), {});
  const nlohmann::json blocks = api::blocks_json(reading.board);
  std::string all;
  for (const std::string& each : test::differences(example.expect["blocks"], blocks)) all += each + "\n";
  EXPECT_EQ(all, "") << example.text;
  for (const domain::Diagnostic& diagnostic : reading.diagnostics)
    EXPECT_NE(diagnostic.severity, domain::Severity::Error) << diagnostic.text;
}

INSTANTIATE_TEST_SUITE_P(All, SeedBoards, ::testing::ValuesIn(test::examples()),
                         [](const auto& tested) { return tested.param.id; });

}  // namespace
}  // namespace repwright::board
