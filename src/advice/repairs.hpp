#pragma once

#include <functional>
#include <vector>

#include "base/result.hpp"
#include "domain/repair.hpp"
#include "rehearsal/rehearse.hpp"

namespace repwright::advice {

/// Rehearses a board so many times with the same luck each time (common random numbers); may be called from
/// several threads at once.
using Trial = std::function<base::Result<domain::Consequences>(const domain::Board& board, int runs)>;

/// How thoroughly is searched.
struct Halving {
  int first_runs = 32;  // of every edit
  int last_runs = 200;  // of those that came through
  int survivors = 4;
  int shown = 3;
  double least_gain = 0.1;  // minutes; less is not worth a change
  /// Told after every trial, from whatever thread made it: so many of so many that are planned.
  std::function<void(int done, int of)> progress{};
};

/// The edits that help most per change, by successive halving: all with few runs, the best again with many.
/// Of each kind in a block only the best is tried again. Fails when a trial of the board as it stands does;
/// an edit whose trial fails is left out. Same arguments, same answer, whatever `for_each` does. Once trials
/// answer that they were stopped, the best so far: of all that were tried often, or else of what was tried.
base::Result<domain::RepairPlan> best_repairs(
    const domain::Board& board, const std::vector<domain::Edit>& edits, const Trial& trial,
    const Halving& halving = {}, const rehearsal::ForEach& for_each = rehearsal::one_after_another);

}  // namespace repwright::advice
