#include "solver/cbc_solver.hpp"

#include <array>
#include <cmath>
#include <coin/CbcEventHandler.hpp>
#include <coin/CbcModel.hpp>
#include <coin/CbcSolver.hpp>
#include <coin/CoinPackedMatrix.hpp>
#include <coin/OsiClpSolverInterface.hpp>
#include <mutex>
#include <string>
#include <utility>

#include "base/require.hpp"

namespace repwright::solver {
namespace {

/// CBC asks it at every node.
class StopOnRequest final : public CbcEventHandler {
 public:
  explicit StopOnRequest(std::stop_token token) : token_(std::move(token)) {}

  CbcAction event(CbcEvent /*whatever*/) override { return token_.stop_requested() ? stop : noAction; }
  CbcEventHandler* clone() const override { return new StopOnRequest(token_); }

 private:
  std::stop_token token_;
};

void load(OsiClpSolverInterface& into, const domain::WholeModel& model) {
  const int columns = static_cast<int>(model.variables.size());
  CoinPackedMatrix matrix(false, 0, 0);
  matrix.setDimensions(0, columns);
  std::vector<double> row_lower, row_upper, lower, upper, cost;
  for (const domain::LinearRow& row : model.rows) {
    // A variable that stands twice in a row would stand twice in the matrix: CBC wants one number for each.
    std::vector<double> factors(model.variables.size(), 0.0);
    for (const domain::LinearTerm& term : row.terms)
      factors.at(static_cast<std::size_t>(term.variable)) += term.factor;
    std::vector<int> places;
    std::vector<double> values;
    for (int c = 0; c < columns; ++c)
      if (const double factor = factors[static_cast<std::size_t>(c)]; factor != 0) {
        places.push_back(c);
        values.push_back(factor);
      }
    matrix.appendRow(static_cast<int>(places.size()), places.data(), values.data());
    row_lower.push_back(row.at_least);
    row_upper.push_back(row.at_most);
  }
  for (const domain::WholeVariable& variable : model.variables) {
    lower.push_back(variable.lower);
    upper.push_back(variable.upper);
    cost.push_back(variable.cost);
  }
  into.setHintParam(OsiDoReducePrint, true);
  into.messageHandler()->setLogLevel(0);
  into.loadProblem(matrix, lower.data(), upper.data(), cost.data(), row_lower.data(), row_upper.data());
  for (int c = 0; c < columns; ++c) into.setInteger(c);
}

/// As CBC's own program solves it, with its presolve, cuts and heuristics, saying nothing.
void run(CbcModel& model, int nodes) {
  CbcSolverUsefulData parameters;
  parameters.noPrinting_ = true;
  CbcMain0(model, parameters);
  model.setLogLevel(0);
  model.messageHandler()->setLogLevel(0);
  const std::string most = std::to_string(nodes);
  std::array<const char*, 11> words{"cbc",        "-log",          "0",         "-ratioGap",
                                    "0",          "-allowableGap", "0.0000001", "-maxNodes",
                                    most.c_str(), "-solve",        "-quit"};
  const auto nothing = [](CbcModel*, int) { return 0; };
  CbcMain1(static_cast<int>(words.size()), words.data(), model, nothing, parameters);
}

/// Nothing to choose: rows hold or not as they stand.
base::Result<domain::WholeSolution> without_variables(const domain::WholeModel& model) {
  for (const domain::LinearRow& row : model.rows)
    if (row.at_least > 0 || row.at_most < 0)
      return base::failure(base::ErrorCode::Infeasible, "no choice satisfies all wishes");
  return domain::WholeSolution{.values = {}, .proven = true};
}

}  // namespace

base::Result<domain::WholeSolution> CbcSolver::solve(const domain::WholeModel& model,
                                                     const domain::SolveLimits& limits) {
  for (const domain::LinearRow& row : model.rows)
    for (const domain::LinearTerm& term : row.terms)
      base::require(term.variable >= 0 && term.variable < static_cast<int>(model.variables.size()),
                    "a row names variables of its model");
  if (model.variables.empty()) return without_variables(model);

  static std::mutex one_at_a_time;
  const std::scoped_lock lock(one_at_a_time);
  OsiClpSolverInterface interface;
  load(interface, model);
  CbcModel search(interface);
  StopOnRequest handler(limits.stop);
  search.passInEventHandler(&handler);
  run(search, limits.nodes);

  if (search.bestSolution() == nullptr) {
    const bool ended_early = limits.stop.stop_requested() || search.isNodeLimitReached();
    return ended_early ? base::failure(base::ErrorCode::Stopped, "stopped before any plan was found")
                       : base::failure(base::ErrorCode::Infeasible, "no choice satisfies all wishes");
  }
  domain::WholeSolution solution;
  for (std::size_t v = 0; v < model.variables.size(); ++v) {
    solution.values.push_back(std::round(search.bestSolution()[v]));
    solution.cost += solution.values[v] * model.variables[v].cost;
  }
  solution.proven = search.isProvenOptimal();
  solution.bound = solution.proven ? solution.cost : search.getBestPossibleObjValue();
  return solution;
}

}  // namespace repwright::solver
