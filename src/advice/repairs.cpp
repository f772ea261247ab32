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

/// The edits that help, the most gain per change first; between equals the order of `edits`.
std::vector<Repair> helping(const std::vector<Edit>& edits, const Consequences& before, int runs,
                            const Trial& trial, const rehearsal::ForEach& for_each) {
  std::vector<std::optional<Consequences>> after(edits.size());
  for_each(static_cast<int>(edits.size()), [&](int e) {
    const auto i = static_cast<std::size_t>(e);
    if (auto told = trial(edits[i].board, runs)) after[i] = *told;
  });
  const double burden_before = burden(before, before.work_s);
  std::vector<Repair> repairs;
  for (std::size_t e = 0; e < edits.size(); ++e) {
    const std::optional<Consequences>& told = after[e];
    if (!told) continue;
    const double gain = burden_before - burden(*told, before.work_s);
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

}  // namespace

base::Result<domain::RepairPlan> best_repairs(const domain::Board& board, std::vector<Edit> edits,
                                              const Trial& trial, const Halving& halving,
                                              const rehearsal::ForEach& for_each) {
  domain::RepairPlan plan;
  plan.tried = static_cast<int>(edits.size());
  plan.runs = halving.last_runs;
  const auto roughly = trial(board, halving.first_runs);
  if (!roughly) return tl::unexpected(roughly.error());
  std::vector<Repair> hopeful = helping(edits, *roughly, halving.first_runs, trial, for_each);
  if (hopeful.size() > static_cast<std::size_t>(halving.survivors))
    hopeful.resize(static_cast<std::size_t>(halving.survivors));
  edits.clear();
  for (Repair& repair : hopeful) edits.push_back(std::move(repair.edit));

  const auto before = trial(board, halving.last_runs);
  if (!before) return tl::unexpected(before.error());
  plan.before = *before;
  for (Repair& repair : helping(edits, *before, halving.last_runs, trial, for_each)) {
    if (static_cast<int>(plan.best.size()) >= halving.shown) break;
    const bool told = std::ranges::any_of(
        plan.best, [&](const Repair& shown) { return same_idea(shown.edit, repair.edit); });
    if (!told && repair.gain >= halving.least_gain) plan.best.push_back(std::move(repair));
  }
  return plan;
}

}  // namespace repwright::advice
