#include "app/team_class.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "solver/cbc_solver.hpp"
#include "support/demo_gym.hpp"

namespace repwright::app {
namespace {

/// Of so many people of the demo gym (invented).
domain::TeamPlan teams_of(const std::string& chalk, std::size_t count, const std::vector<Apart>& apart = {}) {
  const auto gym = test::demo_gym();
  std::vector<domain::Person> people = gym->people;
  people.resize(count);
  const board::Reading reading = board::read(chalk, gym->knowledge.catalogue, gym->knowledge.house);
  const domain::GymClass gym_class;
  solver::CbcSolver solver;
  auto plan = team_class({.reading = reading,
                          .gym = gym->knowledge,
                          .people = people,
                          .gym_class = gym_class,
                          .heads = {},
                          .stop = {}},
                         apart, solver);
  EXPECT_TRUE(plan) << plan.error().message;
  return plan ? *std::move(plan) : domain::TeamPlan{};
}

const std::string in_turns = "Teams of 2, cap 30:00\none works, one rests\n80 push-ups\n120 air squats\n";

/// Of trade.md's job map: the spread of pairs halves against free choice (common practice, no source); here
/// free choice is who stands beside whom.
TEST(TeamClass, HalvesTheSpreadOfNeighbours) {
  const domain::TeamPlan plan = teams_of(in_turns, 24);
  EXPECT_EQ(plan.teams.size(), 12u);
  EXPECT_LT(plan.spread, plan.spread_as_they_stand / 2);
}

TEST(TeamClass, GivesEverybodyOneTeamAlsoForAnOddNumber) {
  const domain::TeamPlan plan = teams_of(in_turns, 11);
  std::set<std::string> seen;
  for (const domain::WorkTeam& team : plan.teams)
    for (const domain::PersonId& id : team.people) EXPECT_TRUE(seen.insert(id.text).second);
  EXPECT_EQ(seen.size(), 11u);
  EXPECT_EQ(plan.teams.back().people.size(), 3u);
}

TEST(TeamClass, KeepsApartByNameOrId) {
  const std::string one = test::demo_gym()->people[0].name;
  const domain::TeamPlan plan = teams_of(in_turns, 6, {{one, "a02"}, {"a01", "a03"}});
  for (const domain::WorkTeam& team : plan.teams)
    if (std::ranges::count(team.people, domain::PersonId{"a01"}) > 0) {
      EXPECT_EQ(std::ranges::count(team.people, domain::PersonId{"a02"}), 0);
      EXPECT_EQ(std::ranges::count(team.people, domain::PersonId{"a03"}), 0);
    }
}

TEST(TeamClass, IsTheSameEveryTime) {
  EXPECT_EQ(teams_of(in_turns, 9), teams_of(in_turns, 9));
}

}  // namespace
}  // namespace repwright::app
