#include "advice/cover.hpp"

#include <cstddef>

namespace repwright::advice {

base::Result<std::vector<Group>> cheapest_cover(int people, const std::vector<Group>& groups,
                                                domain::Solver& solver, const domain::SolveLimits& limits) {
  domain::WholeModel model;
  model.rows.resize(static_cast<std::size_t>(people), {.terms = {}, .at_least = 1, .at_most = 1});
  domain::LinearRow larger{.terms = {}, .at_most = 1};
  for (const Group& group : groups) {
    const int taken = model.add({.cost = group.cost});
    for (const int person : group.people)
      model.rows[static_cast<std::size_t>(person)].terms.push_back({taken, 1});
    if (group.people.size() > 2) larger.terms.push_back({taken, 1});
  }
  if (!larger.terms.empty()) model.rows.push_back(std::move(larger));
  const auto solved = solver.solve(model, limits);
  if (!solved) return tl::unexpected(solved.error());
  std::vector<Group> chosen;
  for (std::size_t i = 0; i < groups.size(); ++i)
    if (solved->values[i] > .5) chosen.push_back(groups[i]);
  return chosen;
}

}  // namespace repwright::advice
