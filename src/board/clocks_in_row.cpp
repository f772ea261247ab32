#include "board/clocks_in_row.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace repwright::board {
namespace {

bool is_bare_amrap(const Draft& draft) {
  return draft.said.amrap && draft.clock && !draft.has_work() && !draft.scheme &&
         draft.block.team_sizes.empty();
}

/// The clocks without work right above `last`, itself behind them.
std::vector<std::size_t> row_above(const std::vector<Draft>& drafts, std::size_t last) {
  std::vector<std::size_t> row{last};
  for (std::size_t i = last; i-- > 0;) {
    if (drafts[i].said.rest) continue;
    if (!is_bare_amrap(drafts[i])) break;
    row.insert(row.begin(), i);
  }
  return row;
}

std::vector<Section> of_part(const std::vector<Section>& sections, int part) {
  std::vector<Section> own;
  for (Section section : sections) {
    std::erase_if(section.entries, [&](const Entry& entry) { return entry.part != part; });
    if (!section.entries.empty()) own.push_back(std::move(section));
  }
  return own;
}

bool is_numbered(const std::vector<Section>& sections, std::size_t most) {
  const auto labelled = [&](const Entry& entry) {
    return entry.part > 0 && static_cast<std::size_t>(entry.part) <= most;
  };
  return std::ranges::all_of(
      sections, [&](const Section& section) { return std::ranges::all_of(section.entries, labelled); });
}

}  // namespace

int clocks_waiting(const Chapter& chapter) {
  if (chapter.drafts.size() < 2 || !chapter.drafts.back().said.amrap) return 0;
  return static_cast<int>(row_above(chapter.drafts, chapter.drafts.size() - 1).size()) - 1;
}

void share_work_of_clocks(Session& session, std::vector<Draft>& drafts) {
  for (std::size_t last = drafts.size(); last-- > 1;) {
    if (!drafts[last].said.amrap || !drafts[last].has_work()) continue;
    const std::vector<std::size_t> row = row_above(drafts, last);
    if (row.size() < 2) continue;
    const std::vector<Section> sections = drafts[last].sections;
    const bool numbered = is_numbered(sections, row.size());
    for (std::size_t i = 0; i < row.size(); ++i) {
      Draft& draft = drafts[row[i]];
      draft.sections = numbered ? of_part(sections, static_cast<int>(i) + 1) : sections;
      if (row[i] == last) continue;
      draft.scheme = drafts[last].scheme;
      draft.said.ladder = drafts[last].said.ladder;
      if (numbered) continue;
      session.remarks.add({"work-of-next", draft.span,
                           fmt::format("`{}` was given the same work as the next", session.kept(draft.span)),
                           "write what is done below each"});
    }
    last = row.front();
    if (last == 0) break;
  }
}

}  // namespace repwright::board
