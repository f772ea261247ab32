#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "base/result.hpp"
#include "domain/solver.hpp"

namespace repwright::advice {

/// How a team's work passes between its people: one after another, or all at once.
enum class TeamWork : std::uint8_t { InTurns, Together };

/// Who is to be put into teams: per person the seconds that one full share (the team's shared work over its
/// asked size) takes alone, and those of what everybody does for themselves, the team together.
struct TeamTask {
  std::vector<double> seconds;
  std::vector<double> own{};  // empty: nothing
  TeamWork work = TeamWork::InTurns;
  int size = 2;
  std::optional<double> odd_factor;          // of a team of one more, if the board says it
  std::vector<std::pair<int, int>> apart{};  // not in one team
};

/// People by their places in the task, slowest and fastest mixed.
struct Team {
  std::vector<int> people;
  double seconds = 0;
  double factor = 1;
};
struct Teams {
  std::vector<Team> teams;
  std::vector<std::pair<int, int>> kept_together;  // who should be apart and could not
};

/// When a team of these people is through with `factor` of the shared work and with their own.
double team_seconds(const TeamTask& task, const std::vector<int>& people, double factor);

/// How much of the shared work a team must do to end with the others: to the nearest twentieth, from a half
/// to twice.
double fair_factor(const TeamTask& task, const std::vector<int>& people, double target_s);

/// Teams that end together: pairs (and a team of three for an odd number) of least sum of squares around the
/// common time, larger teams by exchanging people while that helps. Who should be apart is, wherever that
/// leaves everybody a team. One person is a team alone; nobody is none. Fails as the solver does.
base::Result<Teams> choose_teams(const TeamTask& task, domain::Solver& solver,
                                 const domain::SolveLimits& limits = {});

}  // namespace repwright::advice
