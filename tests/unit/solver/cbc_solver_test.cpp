#include "solver/cbc_solver.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <rapidcheck/gtest.h>
#include <array>
#include <cmath>
#include <stop_token>
#include <thread>
#include <vector>

#include "support/brute_solver.hpp"

namespace repwright::solver {
namespace {

using domain::LinearRow;
using domain::WholeModel;
using domain::WholeSolution;
using ::testing::ElementsAre;

base::Result<WholeSolution> solved(const WholeModel& model, const domain::SolveLimits& limits = {}) {
  return CbcSolver().solve(model, limits);
}

/// Each row to one column and each column to one row, at least cost.
WholeModel assignment(const std::vector<std::vector<double>>& costs) {
  const int n = static_cast<int>(costs.size());
  WholeModel model;
  for (const std::vector<double>& row : costs)
    for (const double cost : row) model.add({.cost = cost});
  for (int i = 0; i < n; ++i) {
    LinearRow in_row{.terms = {}, .at_least = 1, .at_most = 1};
    LinearRow in_column = in_row;
    for (int j = 0; j < n; ++j) {
      in_row.terms.push_back({i * n + j});
      in_column.terms.push_back({j * n + i});
    }
    model.rows.push_back(in_row);
    model.rows.push_back(in_column);
  }
  return model;
}

// Kuhn, H. W. (1955), Naval Research Logistics Quarterly 2:83-97, DOI 10.1002/nav.3800020109: four people,
// four jobs, the ratings of the paper's example and its best sum of 27 (from memory). Munkres (1957), J. SIAM
// 5(1):32-38, DOI 10.1137/0105003, proves the method for any such table.
TEST(CbcSolver, FindsTheBestSumOfKuhnsExample) {
  const std::vector<std::vector<double>> ratings{{8, 7, 9, 9}, {5, 2, 7, 8}, {6, 1, 4, 9}, {2, 3, 2, 6}};
  std::vector<std::vector<double>> costs = ratings;
  for (std::vector<double>& row : costs)
    for (double& cost : row) cost = -cost;
  const auto solution = solved(assignment(costs));
  ASSERT_TRUE(solution);
  EXPECT_TRUE(solution->proven);
  EXPECT_DOUBLE_EQ(solution->cost, -27);
}

// The rearrangement inequality (Hardy, Littlewood & Polya, Inequalities, 1934, section 10.2): the least sum
// of products pairs the largest with the smallest.
TEST(CbcSolver, PairsTheLargestWithTheSmallestAsTheRearrangementInequalitySays) {
  constexpr int n = 14;
  std::vector<std::vector<double>> costs(n, std::vector<double>(n));
  double least = 0;
  for (int i = 0; i < n; ++i) {
    least += (i + 1) * (n - i);
    for (int j = 0; j < n; ++j)
      costs[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)] = (i + 1) * (j + 1);
  }
  const auto solution = solved(assignment(costs));
  ASSERT_TRUE(solution);
  EXPECT_DOUBLE_EQ(solution->cost, least);
}

TEST(CbcSolver, ChoosesWholeNumbersWhereHalvesWouldBeCheaper) {
  WholeModel model;
  model.add({.cost = -5, .upper = 3});
  model.add({.cost = -4, .upper = 3});
  model.rows.push_back({.terms = {{0, 6}, {1, 4}}, .at_most = 24});
  model.rows.push_back({.terms = {{0, 1}, {1, 2}}, .at_most = 6});
  const auto solution = solved(model);
  ASSERT_TRUE(solution);
  EXPECT_DOUBLE_EQ(solution->cost, -19);
  EXPECT_THAT(solution->values, ElementsAre(3, 1));
}

TEST(CbcSolver, AddsUpAVariableThatStandsTwiceInARow) {
  WholeModel model;
  model.add({.cost = -1, .upper = 9});
  model.rows.push_back({.terms = {{0, 1}, {0, 1}}, .at_most = 7});
  EXPECT_THAT(solved(model)->values, ElementsAre(3));
}

TEST(CbcSolver, SaysWhenNoChoiceSatisfiesAllRows) {
  WholeModel model;
  model.add({.cost = 1});
  model.add({.cost = 1});
  model.rows.push_back({.terms = {{0}, {1}}, .at_least = 3});
  const auto solution = solved(model);
  ASSERT_FALSE(solution);
  EXPECT_EQ(solution.error().code, base::ErrorCode::Infeasible);
}

TEST(CbcSolver, SaysWhenOnlyFractionsWouldDo) {
  WholeModel model;
  model.add({.cost = 1, .upper = 5});
  model.rows.push_back({.terms = {{0, 2}}, .at_least = 3, .at_most = 3});
  const auto solution = solved(model);
  ASSERT_FALSE(solution);
  EXPECT_EQ(solution.error().code, base::ErrorCode::Infeasible);
}

TEST(CbcSolver, HasAnAnswerForAModelWithoutVariables) {
  WholeModel model;
  EXPECT_TRUE(solved(model)->proven);
  model.rows.push_back({.terms = {}, .at_least = 1});
  EXPECT_FALSE(solved(model));
}

/// A market split (Cornuejols & Dawande 1998, IPCO VI, LNCS 1412:284-293, DOI 10.1007/3-540-69346-7_22): rows
/// that must hold to the unit, on which branch and bound is known to search for very long.
WholeModel market_split() {
  constexpr int markets = 5;
  constexpr int shops = 40;
  WholeModel model;
  for (int s = 0; s < shops; ++s) model.add({.cost = 1});
  unsigned number = 12345;
  for (int m = 0; m < markets; ++m) {
    LinearRow row;
    double sum = 0;
    for (int s = 0; s < shops; ++s) {
      number = number * 1664525u + 1013904223u;
      row.terms.push_back({s, static_cast<double>((number >> 16) % 100)});
      sum += row.terms.back().factor;
    }
    row.at_least = row.at_most = std::floor(sum / 2);
    model.rows.push_back(row);
  }
  return model;
}

TEST(CbcSolver, EndsAfterSoManyNodesTheSameEveryTime) {
  for (int time = 0; time < 2; ++time) {
    const auto solution = solved(market_split(), {.nodes = 30, .stop = {}});
    ASSERT_FALSE(solution);
    EXPECT_EQ(solution.error().code, base::ErrorCode::Stopped);
  }
}

TEST(CbcSolver, EndsWhenItIsStopped) {
  std::stop_source stop;
  stop.request_stop();
  const auto solution = solved(market_split(), {.nodes = 100'000'000, .stop = stop.get_token()});
  ASSERT_FALSE(solution);
  EXPECT_EQ(solution.error().code, base::ErrorCode::Stopped);
}

TEST(CbcSolver, GivesEveryThreadItsOwnRightAnswer) {
  std::array<double, 8> costs{};
  {
    std::vector<std::jthread> threads;
    for (std::size_t t = 0; t < costs.size(); ++t)
      threads.emplace_back([&, t] {
        WholeModel model;
        model.add({.cost = 1, .upper = 100});
        model.rows.push_back({.terms = {{0, 2}}, .at_least = static_cast<double>(2 * t + 1)});
        costs.at(t) = solved(model)->cost;
      });
  }
  EXPECT_THAT(costs, ElementsAre(1, 2, 3, 4, 5, 6, 7, 8));
}

RC_GTEST_PROP(CbcSolver, CostsWhatTryingEveryChoiceCosts, ()) {
  const int variables = *rc::gen::inRange(1, 8);
  WholeModel model;
  for (int v = 0; v < variables; ++v)
    model.add({.cost = static_cast<double>(*rc::gen::inRange(-9, 10)),
               .upper = static_cast<double>(*rc::gen::inRange(1, 3))});
  const int rows = *rc::gen::inRange(0, 5);
  for (int r = 0; r < rows; ++r) {
    LinearRow row;
    for (int v = 0; v < variables; ++v)
      row.terms.push_back({v, static_cast<double>(*rc::gen::inRange(-4, 5))});
    const double middle = *rc::gen::inRange(-6, 9);
    if (*rc::gen::arbitrary<bool>()) row.at_least = middle;
    if (*rc::gen::arbitrary<bool>()) row.at_most = middle + *rc::gen::inRange(0, 4);
    model.rows.push_back(row);
  }
  const auto found = solved(model);
  const auto known = test::BruteSolver().solve(model, {});
  RC_ASSERT(found.has_value() == known.has_value());
  if (!found) return;
  RC_ASSERT(found->proven);
  RC_ASSERT(std::abs(found->cost - known->cost) < 1e-6);
  RC_ASSERT(solved(model)->values == found->values);
}

}  // namespace
}  // namespace repwright::solver
