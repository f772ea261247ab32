#pragma once

#include <vector>

#include "base/result.hpp"
#include "domain/solver.hpp"

namespace repwright::advice {

/// People, by their numbers, who would be one team, and what that costs.
struct Group {
  std::vector<int> people;
  double cost = 0;
};

/// The cheapest choice of groups that puts each of so many people into exactly one, at most one of the groups
/// being larger than a pair. Pairs alone: a general matching. Fails as the solver does.
base::Result<std::vector<Group>> cheapest_cover(int people, const std::vector<Group>& groups,
                                                domain::Solver& solver, const domain::SolveLimits& limits);

}  // namespace repwright::advice
