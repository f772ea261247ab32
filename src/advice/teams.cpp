#include "advice/teams.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>

#include "advice/cover.hpp"

namespace repwright::advice {
namespace {

constexpr double should_be_apart = 1e5;  // s^2, beside what ending apart can cost
constexpr double largest_cost = 9e5;
constexpr std::size_t most_threes = 300;  // teams of three that are looked at, the fairest first
constexpr double factor_step = 0.05;

double square(double x) {
  return x * x;
}

bool apart(const TeamTask& task, int i, int j) {
  return std::ranges::any_of(
      task.apart, [&](const auto& two) { return two == std::pair(i, j) || two == std::pair(j, i); });
}

/// The middle of what teams of the asked size would take: of all pairs, or by everybody's mean.
double common_time(const TeamTask& task) {
  const int people = static_cast<int>(task.seconds.size());
  double sum = 0;
  int count = 0;
  for (int i = 0; i < people; ++i)
    for (int j = i + 1; j < people; ++j, ++count) sum += team_seconds(task, {i, j}, 1);
  return count > 0 ? sum / count : team_seconds(task, {0}, 1);
}

/// How long the slowest of them is at what each does alone.
double own_seconds(const TeamTask& task, const std::vector<int>& people) {
  double most = 0;
  if (!task.own.empty())
    for (const int person : people) most = std::max(most, task.own[static_cast<std::size_t>(person)]);
  return most;
}

double factor_of(const TeamTask& task, const std::vector<int>& people, double target) {
  const auto count = static_cast<int>(people.size());
  if (count == task.size) return 1;
  if (count < task.size) return static_cast<double>(count) / task.size;  // the share of each stays
  return task.odd_factor.value_or(fair_factor(task, people, target));
}

Team team_of(const TeamTask& task, std::vector<int> people, double target) {
  const double factor = factor_of(task, people, target);
  const double seconds = team_seconds(task, people, factor);
  return {std::move(people), seconds, factor};
}

double cost_of(const TeamTask& task, const std::vector<int>& people, double target) {
  double cost = square(team_seconds(task, people, factor_of(task, people, target)) - target);
  for (std::size_t i = 0; i < people.size(); ++i)
    for (std::size_t j = i + 1; j < people.size(); ++j)
      if (apart(task, people[i], people[j])) cost += should_be_apart;
  return std::min(cost, largest_cost);
}

using People = std::vector<int>;

/// All pairs, and for an odd number the teams of three that cost least by themselves.
std::vector<Group> groups_of(const TeamTask& task, double target) {
  const int people = static_cast<int>(task.seconds.size());
  const auto group = [&](People who) {
    const double cost = cost_of(task, who, target);
    return Group{std::move(who), cost};
  };
  std::vector<Group> threes;
  if (people % 2 == 1)
    for (int a = 0; a < people; ++a)
      for (int b = a + 1; b < people; ++b)
        for (int c = b + 1; c < people; ++c) threes.push_back(group({a, b, c}));
  std::ranges::stable_sort(threes, {}, &Group::cost);
  if (threes.size() > most_threes) threes.resize(most_threes);
  std::vector<Group> all;
  for (int a = 0; a < people; ++a)
    for (int b = a + 1; b < people; ++b) all.push_back(group({a, b}));
  std::ranges::move(threes, std::back_inserter(all));
  return all;
}

base::Result<std::vector<People>> in_pairs(const TeamTask& task, double target, domain::Solver& solver,
                                           const domain::SolveLimits& limits) {
  const auto people = static_cast<int>(task.seconds.size());
  auto chosen = cheapest_cover(people, groups_of(task, target), solver, limits);
  if (!chosen) return tl::unexpected(chosen.error());
  std::vector<People> teams;
  for (Group& group : *chosen) teams.push_back(std::move(group.people));
  return teams;
}

/// Fast and slow dealt out in turns, there and back, then exchanged two by two while that helps.
std::vector<People> by_exchange(const TeamTask& task, double target) {
  std::vector<int> order(task.seconds.size());
  std::iota(order.begin(), order.end(), 0);
  std::ranges::stable_sort(order, {}, [&](int p) { return task.seconds[static_cast<std::size_t>(p)]; });
  const std::size_t count = std::max<std::size_t>(1, order.size() / static_cast<std::size_t>(task.size));
  std::vector<People> teams(count);
  for (std::size_t i = 0; i < order.size(); ++i) {
    const std::size_t lap = i / count;
    const std::size_t at = i % count;
    teams[lap % 2 == 0 ? at : count - 1 - at].push_back(order[i]);
  }
  const auto both = [&](std::size_t a, std::size_t b) {
    return cost_of(task, teams[a], target) + cost_of(task, teams[b], target);
  };
  for (bool better = true; better;) {
    better = false;
    for (std::size_t a = 0; a < count; ++a)
      for (std::size_t b = a + 1; b < count; ++b)
        for (int& one : teams[a])
          for (int& other : teams[b]) {
            const double before = both(a, b);
            std::swap(one, other);
            if (both(a, b) < before - 1e-9)
              better = true;
            else
              std::swap(one, other);
          }
  }
  return teams;
}

base::Result<std::vector<People>> chosen(const TeamTask& task, double target, domain::Solver& solver,
                                         const domain::SolveLimits& limits) {
  const auto people = static_cast<int>(task.seconds.size());
  People all(task.seconds.size());
  std::iota(all.begin(), all.end(), 0);
  if (people <= task.size) return std::vector<People>{all};
  if (task.size != 2) return by_exchange(task, target);
  return in_pairs(task, target, solver, limits);
}

}  // namespace

double team_seconds(const TeamTask& task, const std::vector<int>& people, double factor) {
  double sum = 0;
  double rate = 0;
  for (const int person : people) {
    const double seconds = task.seconds[static_cast<std::size_t>(person)];
    sum += seconds;
    rate += 1 / seconds;
  }
  const double size = task.size;
  const double shared =
      task.work == TeamWork::InTurns ? size * sum / static_cast<double>(people.size()) : size / rate;
  return factor * shared + own_seconds(task, people);
}

double fair_factor(const TeamTask& task, const std::vector<int>& people, double target_s) {
  const double own = own_seconds(task, people);
  const double shared = team_seconds(task, people, 1) - own;
  const double exact = shared > 0 ? (target_s - own) / shared : 1;
  return std::clamp(std::round(exact / factor_step) * factor_step, 0.5, 2.0);
}

base::Result<Teams> choose_teams(const TeamTask& task, domain::Solver& solver,
                                 const domain::SolveLimits& limits) {
  Teams result;
  if (task.seconds.empty()) return result;
  const double target = common_time(task);
  auto teams = chosen(task, target, solver, limits);
  if (!teams) return tl::unexpected(teams.error());
  for (People& people : *teams) {
    for (std::size_t i = 0; i < people.size(); ++i)
      for (std::size_t j = i + 1; j < people.size(); ++j)
        if (apart(task, people[i], people[j])) result.kept_together.emplace_back(people[i], people[j]);
    result.teams.push_back(team_of(task, std::move(people), target));
  }
  return result;
}

}  // namespace repwright::advice
