#include "app/away_warm_up.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "advice/warm_up.hpp"
#include "advice/warm_up_needs.hpp"
#include "base/text.hpp"
#include "timetable/box_words.hpp"

namespace repwright::app {
namespace {

using domain::Block;

constexpr base::Duration usual_length = 10 * base::minute;

bool words_of_a_warm_up(const Block& block) {
  if (!block.items.empty() || !block.slots.empty() || !block.children.empty()) return false;
  const std::string& words = block.title.empty() ? block.text : block.title;
  return timetable::box_kind(words, timetable::BoxKind::Work) == timetable::BoxKind::WarmUp;
}

std::string told(const std::vector<domain::WarmUpStep>& steps) {
  std::vector<std::string> names;
  for (const domain::WarmUpStep& step : steps) {
    // A comma parts the drills from each other here.
    std::string name = base::lower(step.name);
    std::erase(name, ',');
    names.push_back(std::move(name));
  }
  return fmt::format("Warm-up: {}", fmt::join(names, ", "));
}

}  // namespace

base::Result<domain::Board> with_own_warm_up(domain::Board board, const AwayWarmUp& away,
                                             domain::Solver& solver) {
  const bool any = std::ranges::any_of(board.blocks, words_of_a_warm_up);
  if (!any) return board;
  const std::vector<domain::Drill> drills = advice::away_drills(away.catalogue, away.place, away.limits);
  const auto needs = advice::warm_up_needs(advice::lines_to_prepare(board), away.catalogue);
  const std::vector<advice::WithLimits> nobody;
  for (Block& block : board.blocks) {
    if (!words_of_a_warm_up(block)) continue;
    const auto chosen = advice::choose_warm_up(
        {needs, drills, block.duration.value_or(usual_length), nobody, away.solve}, solver);
    if (!chosen) return tl::unexpected(chosen.error());
    block.title.clear();
    block.text = chosen->steps.empty() ? "Warm-up" : told(chosen->steps);
  }
  return board;
}

}  // namespace repwright::app
