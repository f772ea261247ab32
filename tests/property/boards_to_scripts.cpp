#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <limits>

#include <nlohmann/json.hpp>

#include "board/read.hpp"
#include "support/floor.hpp"
#include "support/script_text.hpp"
#include "support/source_dir.hpp"
#include "timetable/length.hpp"

/// From chalk to scripts: the thirty boards of tests/data/whiteboards.json (invented).
namespace repwright {
namespace {

nlohmann::json thirty_boards() {
  std::ifstream file(test::source_dir() / "tests/data/whiteboards.json");
  return nlohmann::json::parse(file).at("boards");
}

TEST(BoardsToScripts, EveryFixedBoardIsLaidOutInItsFixedSeconds) {
  for (const auto& one : thirty_boards()) {
    const auto& wanted = one.at("expect").at("fixed_seconds");
    if (wanted.is_null()) continue;
    const domain::Board read =
        board::read(one.at("text").get<std::string>(), test::shipped_catalogue(), {}).board;
    double sum = 0;
    for (const timetable::Box& box : timetable::lay_out(read, {}).boxes)
      sum += box.planned ? box.planned->si() : std::numeric_limits<double>::infinity();
    EXPECT_DOUBLE_EQ(sum, wanted.get<double>()) << one.at("id");
  }
}

TEST(BoardsToScripts, EveryBoardGivesEverybodyWorkInEveryPiece) {
  test::Floor floor;
  floor.add_many(7);
  floor.people[3].limits = {{domain::LimitId{"no-hang"}, "rows", std::nullopt}};
  for (const auto& one : thirty_boards()) {
    const domain::Board read =
        board::read(one.at("text").get<std::string>(), test::shipped_catalogue(), {}).board;
    const rehearsal::WrittenFloor written = floor.write(read);
    EXPECT_FALSE(written.plan.pieces.empty()) << one.at("id");
    for (const rehearsal::ScriptedPiece& piece : written.plan.pieces)
      for (const rehearsal::Script& script : piece.scripts)
        EXPECT_FALSE(script.tasks.empty()) << one.at("id") << test::script_text(script);
  }
}

}  // namespace
}  // namespace repwright
