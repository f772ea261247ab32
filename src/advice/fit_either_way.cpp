#include "advice/fit_either_way.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "advice/fit_steps.hpp"
#include "domain/board_search.hpp"
#include "domain/ladder.hpp"
#include "rehearsal/ability.hpp"
#include "rehearsal/amounts.hpp"

namespace repwright::advice {
namespace {

constexpr double ready_for = 0.5;  // of a set, in one go, by who may be shown a harder version of it

/// The rounds said, also where they are as written, so that two ways compare.
domain::FittedPerson with_rounds(const FitTask& task, domain::FittedPerson person) {
  if (task.piece.rounds) person.rounds.try_emplace(task.piece.id, *task.piece.rounds);
  return person;
}

/// Whether the person has, in one go, a fair part of every set that the step makes another: who would do it
/// in ones and twos is not ready for it.
bool within_reach(const FitTask& task, int place, const domain::FittedPerson& own,
                  const domain::FittedPerson& step) {
  const auto p = static_cast<std::size_t>(place);
  const rehearsal::Ability ability{task.plain, task.plain.people[p], task.plain.bodies[p], {}};
  for (std::size_t i = 0; i < std::min(own.items.size(), step.items.size()); ++i) {
    const domain::FittedItem& item = step.items[i];
    const domain::Movement* movement = task.plain.catalogue.find(item.movement);
    if (movement == nullptr || (item.movement == own.items[i].movement && item.load == own.items[i].load))
      continue;
    const double load = item.load ? item.load->si() * item.implements : 0;
    const double best = rehearsal::best_set(ability, *movement, item.unit, load);
    if (best < ready_for * rehearsal::largest_set(item.amount)) return false;
  }
  return true;
}

/// Whether a line becomes a harder version than the board's.
bool beyond_the_board(const FitTask& task, const domain::Board& board, const FitChange& change) {
  return std::ranges::any_of(change.versions, [&](const auto& version) {
    const domain::Item* written = domain::find_item(board, version.first);
    return written != nullptr && written->movement &&
           domain::steps_down(task.plain.catalogue, version.second, *written->movement) > 0;
  });
}

}  // namespace

std::vector<EitherWay> either_way(const FitTask& task, const std::vector<FitChange>& singles,
                                  const std::vector<const FitOption*>& own,
                                  const rehearsal::ForEach& for_each) {
  std::vector<EitherWay> steps(own.size());
  // People with the same way are tried together.
  std::vector<std::pair<FitChange, std::vector<int>>> groups;
  for (std::size_t p = 0; p < own.size(); ++p) {
    const auto known = std::ranges::find(groups, own[p]->change, [](const auto& one) { return one.first; });
    if (known != groups.end())
      known->second.push_back(static_cast<int>(p));
    else
      groups.emplace_back(own[p]->change, std::vector<int>{static_cast<int>(p)});
  }
  const domain::Board as_written = board_alone(task, {});
  for_each(static_cast<int>(groups.size()), [&](int g) {
    const auto& [own_change, places] = groups[static_cast<std::size_t>(g)];
    const Some some = some_of(task, places);
    for (const FitChange& change : changes_beside(own_change, singles)) {
      // Who does less than the board asks goes back to the board first.
      if (own_change != FitChange{} && beyond_the_board(task, as_written, change)) continue;
      const domain::Board board = board_alone(task, change);
      domain::FittedBoard fitted = fitted_board(task, some, board);
      for (std::size_t i = 0; i < places.size(); ++i) {
        const auto p = static_cast<std::size_t>(places[i]);
        domain::FittedPerson& other = fitted.people[i];
        if (board.blocks.front().rounds != task.piece.rounds)
          other.rounds[task.piece.id] = board.blocks.front().rounds.value_or(1);
        const auto by =
            harder_by(task.plain.catalogue, with_rounds(task, own[p]->fitted), with_rounds(task, other));
        if (!by || (*by > 0 && !within_reach(task, places[i], own[p]->fitted, other))) continue;
        NextStep& step = *by > 0 ? steps[p].harder : steps[p].easier;
        if (step.by > 0 && std::abs(*by) >= step.by) continue;
        step = {std::abs(*by), std::move(other)};
      }
    }
  });
  return steps;
}

}  // namespace repwright::advice
