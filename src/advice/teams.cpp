#include "advice/teams.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

#include "advice/matching.hpp"

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

struct Choice {
  std::vector<std::vector<int>> teams;
  double cost = 0;
};

/// These people in pairs.
Choice in_pairs(const TeamTask& task, const std::vector<int>& people, double target) {
  const auto cost = [&](int i, int j) {
    return cost_of(task, {people[static_cast<std::size_t>(i)], people[static_cast<std::size_t>(j)]}, target);
  };
  const std::vector<int> partner = match_in_pairs(static_cast<int>(people.size()), cost);
  Choice choice;
  for (int i = 0; i < static_cast<int>(people.size()); ++i) {
    const int j = partner[static_cast<std::size_t>(i)];
    if (j < i) continue;
    choice.teams.push_back({people[static_cast<std::size_t>(i)], people[static_cast<std::size_t>(j)]});
    choice.cost += cost(i, j);
  }
  return choice;
}

/// What every person costs at least in a pair: half of what their cheapest pair does. A way to pair some of
/// them costs no less than the sum.
std::vector<double> least_halves(const TeamTask& task, double target) {
  const auto people = static_cast<int>(task.seconds.size());
  std::vector<double> least(task.seconds.size(), largest_cost / 2);
  for (int i = 0; i < people; ++i)
    for (int j = i + 1; j < people; ++j) {
      const double half = cost_of(task, {i, j}, target) / 2;
      for (const int person : {i, j}) {
        double& of_person = least[static_cast<std::size_t>(person)];
        of_person = std::min(of_person, half);
      }
    }
  return least;
}

/// All teams of three with what each costs by itself, the cheapest first.
std::vector<Choice> threes(const TeamTask& task, double target) {
  const int people = static_cast<int>(task.seconds.size());
  std::vector<Choice> all;
  for (int a = 0; a < people; ++a)
    for (int b = a + 1; b < people; ++b)
      for (int c = b + 1; c < people; ++c) all.push_back({{{a, b, c}}, cost_of(task, {a, b, c}, target)});
  std::ranges::stable_sort(all, {}, &Choice::cost);
  if (all.size() > most_threes) all.resize(most_threes);
  return all;
}

Choice pairs_and_three(const TeamTask& task, double target) {
  Choice best{{}, std::numeric_limits<double>::infinity()};
  const std::vector<double> least = least_halves(task, target);
  for (const Choice& three : threes(task, target)) {
    if (three.cost >= best.cost) break;  // what comes costs as much by itself
    std::vector<int> others;
    double at_least = three.cost;
    for (int p = 0; p < static_cast<int>(task.seconds.size()); ++p)
      if (std::ranges::find(three.teams[0], p) == three.teams[0].end()) {
        others.push_back(p);
        at_least += least[static_cast<std::size_t>(p)];
      }
    if (at_least >= best.cost) continue;
    Choice choice = in_pairs(task, others, target);
    choice.cost += three.cost;
    choice.teams.push_back(three.teams[0]);
    if (choice.cost < best.cost) best = std::move(choice);
  }
  return best;
}

/// Fast and slow dealt out in turns, there and back, then exchanged two by two while that helps.
Choice by_exchange(const TeamTask& task, double target) {
  std::vector<int> order(task.seconds.size());
  std::iota(order.begin(), order.end(), 0);
  std::ranges::stable_sort(order, {}, [&](int p) { return task.seconds[static_cast<std::size_t>(p)]; });
  const std::size_t count = std::max<std::size_t>(1, order.size() / static_cast<std::size_t>(task.size));
  std::vector<std::vector<int>> teams(count);
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
  return {std::move(teams), 0};
}

Choice chosen(const TeamTask& task, double target) {
  const auto people = static_cast<int>(task.seconds.size());
  std::vector<int> all(task.seconds.size());
  std::iota(all.begin(), all.end(), 0);
  if (people <= task.size) return {{all}, 0};
  if (task.size != 2) return by_exchange(task, target);
  return people % 2 == 0 ? in_pairs(task, all, target) : pairs_and_three(task, target);
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

Teams choose_teams(const TeamTask& task) {
  Teams result;
  if (task.seconds.empty()) return result;
  const double target = common_time(task);
  for (std::vector<int>& people : chosen(task, target).teams) {
    for (std::size_t i = 0; i < people.size(); ++i)
      for (std::size_t j = i + 1; j < people.size(); ++j)
        if (apart(task, people[i], people[j])) result.kept_together.emplace_back(people[i], people[j]);
    result.teams.push_back(team_of(task, std::move(people), target));
  }
  return result;
}

}  // namespace repwright::advice
