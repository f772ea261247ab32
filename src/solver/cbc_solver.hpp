#pragma once

#include <mutex>

#include "domain/solver.hpp"

namespace repwright::solver {

/// The port on CBC, a branch-and-cut solver (Forrest & Lougee-Heimer 2005, CBC User Guide, INFORMS Tutorials,
/// DOI 10.1287/educ.1053.0020). CBC keeps state that its models share: one model at a time, whoever asks.
class CbcSolver final : public domain::Solver {
 public:
  base::Result<domain::WholeSolution> solve(const domain::WholeModel& model,
                                            const domain::SolveLimits& limits) override;
};

}  // namespace repwright::solver
