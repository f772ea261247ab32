#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "support/board_of_json.hpp"
#include "support/files.hpp"
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

std::string id_of(const ::testing::TestParamInfo<test::Example>& tested) {
  return tested.param.id;
}

std::vector<test::Example> boards_of(const std::string& file) {
  std::vector<test::Example> list;
  const auto document = nlohmann::json::parse(test::test_data(file));
  for (const auto& each : document["boards"]) list.push_back({each["id"], each["text"], each["expect"]});
  return list;
}

INSTANTIATE_TEST_SUITE_P(All, SeedBoards, ::testing::ValuesIn(test::examples()), id_of);
INSTANTIATE_TEST_SUITE_P(OtherHands, SeedBoards, ::testing::ValuesIn(boards_of("other-hands.json")), id_of);
INSTANTIATE_TEST_SUITE_P(FurtherHands, SeedBoards, ::testing::ValuesIn(boards_of("further-hands.json")),
                         id_of);
INSTANTIATE_TEST_SUITE_P(LiftingHands, SeedBoards, ::testing::ValuesIn(boards_of("lifting-hands.json")),
                         id_of);
INSTANTIATE_TEST_SUITE_P(DemoGym, SeedBoards, ::testing::ValuesIn(boards_of("scenario-boards.json")), id_of);

}  // namespace
}  // namespace repwright::board
