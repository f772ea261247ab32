#include "advice/teams.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <numeric>

#include "advice/cover.hpp"
#include "solver/cbc_solver.hpp"

namespace repwright::advice {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

std::vector<std::vector<int>> sorted_people(const Teams& teams) {
  std::vector<std::vector<int>> all;
  for (const Team& team : teams.teams) {
    all.push_back(team.people);
    std::ranges::sort(all.back());
  }
  return all;
}

/// The least sum of costs over all ways to pair everybody, by trying them.
double least_sum(std::vector<int> people, const std::function<double(int, int)>& cost) {
  if (people.empty()) return 0;
  double best = std::numeric_limits<double>::infinity();
  const int first = people.front();
  for (std::size_t i = 1; i < people.size(); ++i) {
    std::vector<int> rest;
    for (std::size_t j = 1; j < people.size(); ++j)
      if (j != i) rest.push_back(people[j]);
    best = std::min(best, cost(first, people[i]) + least_sum(rest, cost));
  }
  return best;
}

Teams teams_of(const TeamTask& task) {
  solver::CbcSolver solver;
  auto teams = choose_teams(task, solver);
  EXPECT_TRUE(teams) << teams.error().message;
  return teams ? *std::move(teams) : Teams{};
}

RC_GTEST_PROP(Cover, OfPairsCostsWhatTryingEveryMatchingCosts, ()) {
  const int people = 2 * *rc::gen::inRange(1, 6);
  std::vector<Group> pairs;
  std::map<std::pair<int, int>, double> costs;
  for (int i = 0; i < people; ++i)
    for (int j = i + 1; j < people; ++j) {
      costs[{i, j}] = *rc::gen::inRange(0, 40);
      pairs.push_back({.people = {i, j}, .cost = costs[{i, j}]});
    }
  solver::CbcSolver solver;
  const auto chosen = cheapest_cover(people, pairs, solver, {});
  RC_ASSERT(chosen.has_value());
  std::vector<int> everybody(static_cast<std::size_t>(people)), covered;
  std::iota(everybody.begin(), everybody.end(), 0);
  double sum = 0;
  for (const Group& pair : *chosen) {
    sum += pair.cost;
    covered.insert(covered.end(), pair.people.begin(), pair.people.end());
  }
  std::ranges::sort(covered);
  RC_ASSERT(covered == everybody);
  const double least = least_sum(everybody, [&](int i, int j) { return costs.at(std::minmax(i, j)); });
  RC_ASSERT(std::abs(sum - least) < 1e-6);
}

TEST(Teams, PairTheFastestWithTheSlowestWhenTheyWorkInTurns) {
  const Teams teams = teams_of({.seconds = {100, 200, 300, 400}, .odd_factor = {}});
  EXPECT_THAT(sorted_people(teams), UnorderedElementsAre(ElementsAre(0, 3), ElementsAre(1, 2)));
  for (const Team& team : teams.teams) EXPECT_DOUBLE_EQ(team.seconds, 500);
}

TEST(Teams, AddUpRatesWhenAllWorkAtOnce) {
  const TeamTask task{.seconds = {100, 300}, .work = TeamWork::Together, .odd_factor = {}};
  EXPECT_DOUBLE_EQ(team_seconds(task, {0, 1}, 1), 2 / (1.0 / 100 + 1.0 / 300));
}

TEST(Teams, KeepApartWhoIsToBeApart) {
  const Teams teams =
      teams_of({.seconds = {100, 200, 300, 400}, .odd_factor = {}, .apart = {{3, 0}, {0, 1}}});
  EXPECT_THAT(sorted_people(teams), UnorderedElementsAre(ElementsAre(0, 2), ElementsAre(1, 3)));
  EXPECT_THAT(teams.kept_together, IsEmpty());
}

TEST(Teams, SayWhoCouldNotBeKeptApart) {
  const Teams teams = teams_of({.seconds = {100, 200}, .odd_factor = {}, .apart = {{0, 1}}});
  ASSERT_EQ(teams.teams.size(), 1u);
  EXPECT_EQ(teams.kept_together.size(), 1u);
}

TEST(Teams, OfThreeDoWhatTheBoardSaysOrWhatEndsWithTheOthers) {
  const TeamTask asked{.seconds = {100, 100, 100, 100, 100}, .odd_factor = 1.2};
  EXPECT_DOUBLE_EQ(teams_of(asked).teams.back().factor, 1.2);
  EXPECT_DOUBLE_EQ(teams_of(asked).teams.back().seconds, 240);
  const TeamTask open{.seconds = {100, 120, 140, 160, 180}, .odd_factor = {}};
  const Teams teams = teams_of(open);
  ASSERT_EQ(teams.teams.size(), 2u);
  EXPECT_EQ(teams.teams.back().people.size(), 3u);
  EXPECT_NEAR(teams.teams.back().seconds, teams.teams.front().seconds, 30);
}

TEST(Teams, AreOneForOnePersonAndNoneForNobody) {
  EXPECT_THAT(teams_of({.seconds = {}, .odd_factor = {}}).teams, IsEmpty());
  const Teams alone = teams_of({.seconds = {300}, .odd_factor = {}});
  ASSERT_EQ(alone.teams.size(), 1u);
  EXPECT_DOUBLE_EQ(alone.teams[0].factor, 0.5);
}

TEST(Teams, OfFourEndCloserThanNeighboursDo) {
  TeamTask task{
      .seconds = {90, 95, 100, 105, 200, 210, 220, 230, 300, 310, 320, 330}, .size = 4, .odd_factor = {}};
  const Teams teams = teams_of(task);
  ASSERT_EQ(teams.teams.size(), 3u);
  const auto [first, last] = std::ranges::minmax(teams.teams, {}, &Team::seconds);
  EXPECT_LT(last.seconds - first.seconds, 40);
}

RC_GTEST_PROP(Teams, PutEverybodyIntoOneTeamAndNobodyIntoTwo, ()) {
  TeamTask task;
  task.size = *rc::gen::inRange(2, 5);
  task.work = *rc::gen::element(TeamWork::InTurns, TeamWork::Together);
  const int people = *rc::gen::inRange(1, 20);
  for (int p = 0; p < people; ++p) task.seconds.push_back(*rc::gen::inRange(60, 600));
  std::vector<int> all;
  const Teams teams = teams_of(task);
  for (const Team& team : teams.teams) {
    RC_ASSERT(static_cast<int>(team.people.size()) >= std::min(people, task.size));
    all.insert(all.end(), team.people.begin(), team.people.end());
  }
  std::ranges::sort(all);
  std::vector<int> expected(static_cast<std::size_t>(people));
  std::iota(expected.begin(), expected.end(), 0);
  RC_ASSERT(all == expected);
}

/// Over all ways to make pairs and one team of three.
double least_with_three(const TeamTask& task, double target) {
  const auto square = [](double x) { return x * x; };
  const int people = static_cast<int>(task.seconds.size());
  double best = std::numeric_limits<double>::infinity();
  for (int a = 0; a < people; ++a)
    for (int b = a + 1; b < people; ++b)
      for (int c = b + 1; c < people; ++c) {
        std::vector<int> rest;
        for (int p = 0; p < people; ++p)
          if (p != a && p != b && p != c) rest.push_back(p);
        const double pairs =
            least_sum(rest, [&](int i, int j) { return square(team_seconds(task, {i, j}, 1) - target); });
        best = std::min(best, pairs + square(team_seconds(task, {a, b, c}, *task.odd_factor) - target));
      }
  return best;
}

RC_GTEST_PROP(Teams, OfAnOddNumberAreAsEvenAsTheBestOfAllWays, ()) {
  TeamTask task;
  task.odd_factor = 1.5;
  const int people = 2 * *rc::gen::inRange(1, 4) + 1;
  for (int p = 0; p < people; ++p) task.seconds.push_back(*rc::gen::inRange(100, 400));
  const double target = 2 * std::accumulate(task.seconds.begin(), task.seconds.end(), 0.0) / people;
  double sum = 0;
  const Teams teams = teams_of(task);
  for (const Team& team : teams.teams) sum += (team.seconds - target) * (team.seconds - target);
  RC_ASSERT(std::abs(sum - least_with_three(task, target)) < 0.01);
}

}  // namespace
}  // namespace repwright::advice
