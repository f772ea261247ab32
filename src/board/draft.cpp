#include "board/draft.hpp"

#include <algorithm>

namespace repwright::board {

bool Draft::has_work() const {
  const auto filled = [](const Section& section) { return !section.entries.empty(); };
  return std::ranges::any_of(sections, filled) || !slots.empty();
}

bool Draft::untouched() const {
  return !has_work() && !has_clock() && !scheme && !clock && !block.rounds && !block.sets && !block.cap &&
         block.team_sizes.empty() && !block.start && !said.rest && !said.note && !said.superset &&
         !said.sets && !said.relay && block.levels.empty() && texts.empty() && !said.optional && !share &&
         !mode && !block.heats && !said.buy_in;
}

Entry* Draft::last_entry() {
  if (!slots.empty() && !slots.back().empty()) return &slots.back().back();
  for (auto section = sections.rbegin(); section != sections.rend(); ++section)
    if (!section->entries.empty()) return &section->entries.back();
  return nullptr;
}

}  // namespace repwright::board
