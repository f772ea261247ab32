#include "advice/repairs.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "advice/consequences.hpp"

namespace repwright::advice {
namespace {

using domain::Consequences;
using domain::Edit;
using domain::Repair;

/// What a trial of the board and of each edit tells, all with the same runs; nothing where a trial failed.
struct Tried {
  base::Result<Consequences> before;
  std::vector<std::optional<Consequences>> after;
};
Tried tried(const domain::Board& board, const std::vector<Edit>& edits, int runs, const Trial& trial,
            const rehearsal::ForEach& for_each) {
  Tried tried{.before = Consequences{}, .after = std::vector<std::optional<Consequences>>(edits.size())};
  for_each(static_cast<int>(edits.size()) + 1, [&](int t) {
    if (t == 0) {
      tried.before = trial(board, runs);
      return;
    }
    const auto e = static_cast<std::size_t>(t) - 1;
    if (auto told = trial(edits[e].board, runs)) tried.after[e] = *told;
  });
  return tried;
}

/// The edits that help, the most gain per change first; between equals the order of `edits`.
std::vector<Repair> helping(const std::vector<Edit>& edits, const Tried& tried) {
  const Consequences& before = *tried.before;
  const double burden_before = burden(before, before.wanted_s);
  std::vector<Repair> repairs;
  for (std::size_t e = 0; e < edits.size(); ++e) {
    const std::optional<Consequences>& told = tried.after[e];
    if (!told) continue;
    const double gain = burden_before - burden(*told, before.wanted_s);
    if (gain > 0) repairs.push_back({.edit = edits[e], .after = *told, .gain = gain});
  }
  std::ranges::stable_sort(repairs, [](const Repair& a, const Repair& b) {
    return a.gain / a.edit.change > b.gain / b.edit.change;
  });
  return repairs;
}

bool same_idea(const Edit& a, const Edit& b) {
  return a.kind == b.kind && a.block == b.block;
}

/// The first `most` of them, of each idea the first.
std::vector<Repair> of_different_ideas(std::vector<Repair> repairs, int most) {
  std::vector<Repair> chosen;
  for (Repair& repair : repairs) {
    if (static_cast<int>(chosen.size()) >= most) break;
    const bool known =
        std::ranges::any_of(chosen, [&](const Repair& one) { return same_idea(one.edit, repair.edit); });
    if (!known) chosen.push_back(std::move(repair));
  }
  return chosen;
}

}  // namespace

base::Result<domain::RepairPlan> best_repairs(const domain::Board& board, std::vector<Edit> edits,
                                              const Trial& trial, const Halving& halving,
                                              const rehearsal::ForEach& for_each) {
  domain::RepairPlan plan;
  plan.tried = static_cast<int>(edits.size());
  plan.runs = halving.last_runs;
  const Tried roughly = tried(board, edits, halving.first_runs, trial, for_each);
  if (!roughly.before) return tl::unexpected(roughly.before.error());
  std::vector<Repair> hopeful = of_different_ideas(helping(edits, roughly), halving.survivors);
  edits.clear();
  for (Repair& repair : hopeful) edits.push_back(std::move(repair.edit));

  const Tried again = tried(board, edits, halving.last_runs, trial, for_each);
  if (!again.before) return tl::unexpected(again.before.error());
  plan.before = *again.before;
  std::vector<Repair> helpful = helping(edits, again);
  std::erase_if(helpful, [&](const Repair& repair) { return repair.gain < halving.least_gain; });
  plan.best = of_different_ideas(std::move(helpful), halving.shown);
  return plan;
}

}  // namespace repwright::advice
