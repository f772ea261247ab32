#include "sheets/reading_text.hpp"

#include <fmt/format.h>

#include "sheets/clock.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {

std::string reading_text(const ReadingWords& words) {
  std::string text;
  if (!words.title.empty()) text += words.title + "\n";
  if (words.sentences.empty()) text += "Nothing to do was read.\n";
  for (std::size_t i = 0; i < words.sentences.size(); ++i) {
    const std::string number = fmt::format("{:>2}. ", i + 1);
    text += wrapped(number, words.sentences[i], {.width = 100, .indent = 4}) + "\n";
  }
  if (words.fixed_length) text += fmt::format("Fixed length {}.\n", clock_text(words.fixed_length->si()));
  return text;
}

}  // namespace repwright::sheets
