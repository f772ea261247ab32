#pragma once

#include <limits>
#include <stop_token>
#include <vector>

#include "base/result.hpp"

/// Linear models with whole numbers, as values, and the port to whatever solves them.
namespace repwright::domain {

/// One number to be chosen; `cost` is what one of it adds to what is minimised.
struct WholeVariable {
  double cost = 0;
  double lower = 0;
  double upper = 1;
  bool operator==(const WholeVariable&) const = default;
};
/// `factor` times a variable, by its place in the model.
struct LinearTerm {
  int variable = 0;
  double factor = 1;
  bool operator==(const LinearTerm&) const = default;
};
/// The sum of the terms lies between the two ends.
struct LinearRow {
  std::vector<LinearTerm> terms;
  double at_least = -std::numeric_limits<double>::infinity();
  double at_most = std::numeric_limits<double>::infinity();
  bool operator==(const LinearRow&) const = default;
};
/// Every variable is a whole number; the sum of the costs is to be as small as can be.
struct WholeModel {
  std::vector<WholeVariable> variables;
  std::vector<LinearRow> rows;
  bool operator==(const WholeModel&) const = default;

  /// Adds the variable and returns its place.
  int add(WholeVariable variable) {
    variables.push_back(variable);
    return static_cast<int>(variables.size()) - 1;
  }
};

/// When to stop with the best so far. Nodes are counted, not seconds, so that the same model gives the same
/// answer on every machine; `stop` is for people who have waited long enough.
struct SolveLimits {
  int nodes = 100'000;
  std::stop_token stop;
};

/// `values[i]` is that of variable i. Nothing costs less than `bound`; `proven` says that nothing costs less
/// than this.
struct WholeSolution {
  std::vector<double> values;
  double cost = 0;
  double bound = 0;
  bool proven = false;
};

class Solver {
 public:
  Solver() = default;
  Solver(const Solver&) = delete;
  Solver& operator=(const Solver&) = delete;
  virtual ~Solver() = default;

  /// A cheapest choice of the variables, or the best that was found within the limits. May be called from
  /// several threads. Fails with Infeasible when no choice satisfies the rows, with Stopped when the limits
  /// ended the search before it had any.
  virtual base::Result<WholeSolution> solve(const WholeModel& model, const SolveLimits& limits) = 0;
};

}  // namespace repwright::domain
