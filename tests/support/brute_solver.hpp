#pragma once

#include <cmath>
#include <optional>

#include "domain/solver.hpp"

namespace repwright::test {

/// The port by trying every choice: for models of a few variables with a few values each.
class BruteSolver final : public domain::Solver {
 public:
  base::Result<domain::WholeSolution> solve(const domain::WholeModel& model,
                                            const domain::SolveLimits& /*limits*/) override {
    std::optional<domain::WholeSolution> best;
    std::vector<double> values(model.variables.size());
    try_from(0, model, values, best);
    if (!best) return base::failure(base::ErrorCode::Infeasible, "no choice satisfies all wishes");
    best->bound = best->cost;
    best->proven = true;
    return *best;
  }

 private:
  static bool holds(const domain::LinearRow& row, const std::vector<double>& values) {
    double sum = 0;
    for (const domain::LinearTerm& term : row.terms)
      sum += term.factor * values[static_cast<std::size_t>(term.variable)];
    return sum >= row.at_least - 1e-9 && sum <= row.at_most + 1e-9;
  }

  static void try_from(std::size_t at, const domain::WholeModel& model, std::vector<double>& values,
                       std::optional<domain::WholeSolution>& best) {
    if (at == values.size()) {
      for (const domain::LinearRow& row : model.rows)
        if (!holds(row, values)) return;
      double cost = 0;
      for (std::size_t v = 0; v < values.size(); ++v) cost += values[v] * model.variables[v].cost;
      if (!best || cost < best->cost - 1e-9) best = domain::WholeSolution{.values = values, .cost = cost};
      return;
    }
    for (double value = std::ceil(model.variables[at].lower); value <= model.variables[at].upper; ++value) {
      values[at] = value;
      try_from(at + 1, model, values, best);
    }
  }
};

}  // namespace repwright::test
