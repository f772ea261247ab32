#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "board/tidy.hpp"
#include "support/board_of_json.hpp"
#include "support/reading_compare.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::board {
namespace {

TEST(Tidy, Print) {
  const auto& catalogue = test::shipped_catalogue();
  int bad = 0;
  for (const test::Example& example : test::examples()) {
    const Reading first = read(example.text, catalogue, {});
    const std::string text = tidy(first.board, catalogue, {});
    const Reading second = read(text, catalogue, {});
    std::string diag;
    for (const auto& d : second.diagnostics)
      diag += "      " + d.name + " " + std::to_string(d.span.line) + ": " + d.text + "\n";
    const bool same = first.board == second.board;
    std::printf("%s %s\n%s%s", example.id.c_str(), same ? "ok" : "DIFFERENT", text.c_str(), diag.c_str());
    if (!same) {
      ++bad;
      for (const auto& d : test::differences(api::blocks_json(first.board), api::blocks_json(second.board)))
        std::printf("   !! %s\n", d.c_str());
      if (first.board.title != second.board.title)
        std::printf("   !! title %s | %s\n", first.board.title.c_str(), second.board.title.c_str());
    }
  }
  std::printf("bad %d\n", bad);
}

}  // namespace
}  // namespace repwright::board
