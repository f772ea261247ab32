#pragma once

#include "app/rehearse_class.hpp"
#include "domain/fit_plan.hpp"
#include "domain/fitted.hpp"
#include "domain/solver.hpp"

namespace repwright::app {

struct ClassFit {
  domain::FitPlan plan;
  domain::FittedBoard fitted;  // what everybody does, for `rehearse_fitted`
};

/// For everybody who comes the version, counts, loads and distances that meet what the board intends
/// with least change, limits kept, the kit of the shelf given out to all at once; then both, plain and
/// fitted, rehearsed with the same luck. Fails as `rehearse_class` does and as the solver does.
base::Result<ClassFit> fit_class(const ClassRequest& request, domain::Solver& solver);

}  // namespace repwright::app
