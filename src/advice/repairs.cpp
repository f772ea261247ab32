#include "advice/repairs.hpp"

#include <algorithm>
#include <atomic>
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
  bool stopped = false;  // one of them was
};

/// Tries boards, and says how far it has come.
class Trials {
 public:
  Trials(const domain::Board& board, const Trial& trial, const Halving& halving,
         const rehearsal::ForEach& for_each, int planned)
      : board_(board), trial_(trial), halving_(halving), for_each_(for_each), planned_(planned) {}

  Tried all(const std::vector<Edit>& edits, int runs) {
    Tried tried{.before = Consequences{}, .after = std::vector<std::optional<Consequences>>(edits.size())};
    std::atomic<bool> stopped = false;
    for_each_(static_cast<int>(edits.size()) + 1, [&](int t) {
      auto told = trial_(t == 0 ? board_ : edits[static_cast<std::size_t>(t) - 1].board, runs);
      if (!told && told.error().code == base::ErrorCode::Stopped) stopped = true;
      const int done = ++done_;
      if (halving_.progress) halving_.progress(std::min(done, planned_), planned_);
      if (t == 0)
        tried.before = std::move(told);
      else if (told)
        tried.after[static_cast<std::size_t>(t) - 1] = *told;
    });
    tried.stopped = stopped;
    return tried;
  }

 private:
  const domain::Board& board_;
  const Trial& trial_;
  const Halving& halving_;
  const rehearsal::ForEach& for_each_;
  int planned_;
  std::atomic<int> done_ = 0;
};

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

base::Result<domain::RepairPlan> best_repairs(const domain::Board& board, const std::vector<Edit>& edits,
                                              const Trial& trial, const Halving& halving,
                                              const rehearsal::ForEach& for_each) {
  domain::RepairPlan plan;
  plan.tried = static_cast<int>(edits.size());
  plan.runs = halving.last_runs;
  Trials trials(board, trial, halving, for_each, plan.tried + halving.survivors + 2);
  const Tried roughly = trials.all(edits, halving.first_runs);
  if (!roughly.before) return tl::unexpected(roughly.before.error());
  std::vector<Repair> hopeful = of_different_ideas(helping(edits, roughly), halving.survivors);
  std::vector<Edit> survivors;
  survivors.reserve(hopeful.size());
  for (const Repair& repair : hopeful) survivors.push_back(repair.edit);

  const Tried again = roughly.stopped ? roughly : trials.all(survivors, halving.last_runs);
  plan.stopped = roughly.stopped || again.stopped;
  if (plan.stopped) plan.runs = halving.first_runs;
  if (!plan.stopped && !again.before) return tl::unexpected(again.before.error());
  plan.before = plan.stopped ? *roughly.before : *again.before;
  std::vector<Repair> helpful = plan.stopped ? std::move(hopeful) : helping(survivors, again);
  std::erase_if(helpful, [&](const Repair& repair) { return repair.gain < halving.least_gain; });
  plan.best = of_different_ideas(std::move(helpful), halving.shown);
  return plan;
}

}  // namespace repwright::advice
