#pragma once

#include <vector>

#include "advice/away.hpp"
#include "base/result.hpp"
#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/people.hpp"
#include "domain/solver.hpp"

namespace repwright::app {

struct AwayWarmUp {
  const domain::Catalogue& catalogue;
  const advice::AwayPlace& place;
  const std::vector<domain::Limit>& limits;
  domain::SolveLimits solve{};
};

/// The board with its warm-up, where that is only words, told anew: what the coach leads in the hall may need
/// its kit or touch a limit. The drills of the catalogue that prepare most of the lines, in the same minutes;
/// no words where none is possible there. Fails as the solver does.
base::Result<domain::Board> with_own_warm_up(domain::Board board, const AwayWarmUp& away,
                                             domain::Solver& solver);

}  // namespace repwright::app
