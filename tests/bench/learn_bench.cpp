#include <benchmark/benchmark.h>

#include "app/learning_memory.hpp"
#include "body/estimate.hpp"
#include "unit/app/simulated_gym.hpp"

/// What learning from scores costs. Names say the size.
namespace repwright {
namespace {

using app::OpenGym;

constexpr std::array boards{"pull", "run", "swing"};

/// Everybody scores one board a week; scores differ between people and weeks.
OpenGym scored_gym(int people, int weeks) {
  OpenGym gym = app::test::gym_of(people);
  for (int week = 0; week < weeks; ++week)
    for (int p = 0; p < people; ++p) {
      domain::ScoreEntry& entry = gym.knowledge.scores.emplace_back();
      const auto board = static_cast<std::size_t>(week) % boards.size();
      entry.date = std::chrono::year_month_day{app::test::first_monday + std::chrono::days(7 * week)};
      entry.board_id = boards.at(board);
      entry.person = gym.people[static_cast<std::size_t>(p)].id;
      const double off = .03 * (p * 7 % 11) + .01 * (week * 5 % 7);
      if (board == 1)
        entry.value = domain::TimeScore{std::round(600 * (1 + off)) * base::second};
      else
        entry.value = domain::RepsScore{std::round(150 * (1 + off))};
    }
  return gym;
}

/// The fifth score of one person, when the four before it are known.
void learn_one_score(benchmark::State& state) {
  const OpenGym before = scored_gym(1, 4), after = scored_gym(1, 5);
  const app::LearnRequest request{.threads = 1};
  app::LearningMemory four;
  benchmark::DoNotOptimize(four.learn(before, request));
  for (auto _ : state) {
    state.PauseTiming();
    app::LearningMemory memory = four;
    state.ResumeTiming();
    benchmark::DoNotOptimize(memory.learn(after, request));
  }
}
BENCHMARK(learn_one_score)->Unit(benchmark::kMillisecond);

/// The scores of a class of 24, when 30 weeks of it are known.
void learn_one_class(benchmark::State& state) {
  const OpenGym before = scored_gym(24, 30), after = scored_gym(24, 31);
  const app::LearnRequest request{.threads = 1};
  app::LearningMemory thirty;
  benchmark::DoNotOptimize(thirty.learn(before, request));
  for (auto _ : state) {
    state.PauseTiming();
    app::LearningMemory memory = thirty;
    state.ResumeTiming();
    benchmark::DoNotOptimize(memory.learn(after, request));
  }
}
BENCHMARK(learn_one_class)->Unit(benchmark::kMillisecond)->Iterations(3);

void relearn_200_people_x_n_scores(benchmark::State& state) {
  const OpenGym gym = scored_gym(200, static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(app::learn_gym(gym, {.threads = 2}));
}
BENCHMARK(relearn_200_people_x_n_scores)
    ->Arg(10)
    ->Arg(100)
    ->Iterations(1)
    ->UseRealTime()
    ->Unit(benchmark::kSecond);

/// From a run time and a largest set each.
void draw_200_bodies_for_24_people(benchmark::State& state) {
  OpenGym gym = app::test::gym_of(24);
  for (domain::Person& person : gym.people) {
    person.marks.emplace_back(domain::TimedDistance{
        .movement = {"run"}, .distance = 1600 * base::metre, .time = 460 * base::second});
    person.marks.emplace_back(domain::BestSet{.movement = {"push-up"}, .reps = 25});
  }
  for (auto _ : state)
    for (std::size_t p = 0; p < gym.people.size(); ++p) {
      const body::BodyEstimate known =
          body::estimate(gym.people[p], gym.knowledge.catalogue, gym.knowledge.constants);
      for (std::uint64_t run = 0; run < 200; ++run)
        benchmark::DoNotOptimize(body::draw(known, {1}, run, p, gym.knowledge.constants));
    }
}
BENCHMARK(draw_200_bodies_for_24_people)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace repwright

BENCHMARK_MAIN();
