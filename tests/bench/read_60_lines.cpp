#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "board/read.hpp"
#include "support/files.hpp"
#include "support/shipped_catalogue.hpp"

/// Reads sixty lines of the demo gym's boards (all invented) ten times, or as often as the first word says,
/// and prints what one reading costs.
int main(int count, char** words) {
  using namespace repwright;
  const int times = count > 1 ? std::atoi(words[1]) : 10;
  std::string text;
  int lines = 0;
  for (const char* board : {"sat-two-clocks", "tue-pairs", "wed-stations", "wed-every-three", "key-week-05",
                            "key-week-09", "everyday-twelve", "everyday-row-ladder"})
    for (const char c :
         test::text_of_file(test::source_dir() / "data/demo/boards" / (std::string(board) + ".txt"))) {
      if (lines < 60) text += c;
      lines += c == '\n' ? 1 : 0;
    }
  const domain::Catalogue& catalogue = test::shipped_catalogue();
  std::size_t steps = 0;
  const auto start = std::chrono::steady_clock::now();
  for (int i = 0; i < times; ++i) steps += board::read(text, catalogue, {}).steps.size();
  const std::chrono::duration<double, std::milli> spent = std::chrono::steady_clock::now() - start;
  std::printf("60 lines, %zu steps: %.3f ms\n", steps / static_cast<std::size_t>(times),
              spent.count() / times);
  return lines >= 60 && steps > 0 ? 0 : 1;
}
