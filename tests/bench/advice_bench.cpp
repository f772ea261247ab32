#include <benchmark/benchmark.h>

#include <string>

#include "app/fit_class.hpp"
#include "app/hour_class.hpp"
#include "app/open_gym.hpp"
#include "app/repair_class.hpp"
#include "app/team_class.hpp"
#include "app/warm_up_class.hpp"
#include "solver/cbc_solver.hpp"
#include "support/demo_gym.hpp"

/// What advice costs for a class of the demo gym (invented), as it is asked for: 200 runs, all threads.
namespace repwright {
namespace {

/// A class with its board, read once.
struct Asked {
  Asked(const std::string& class_id, const std::string& board_id)
      : gym(*test::demo_gym()),
        text(gym.knowledge.boards.at(board_id)),
        reading(board::read(text, gym.knowledge.catalogue, gym.knowledge.house)),
        gym_class(gym.classes.at(class_id)) {
    gym.knowledge.scores.clear();
  }
  app::ClassRequest request() const {
    app::WhatIf what;
    what.class_id = gym_class.id;
    return app::request_of(gym, reading, gym_class, what);
  }

  app::OpenGym gym;
  std::string text;
  board::Reading reading;
  domain::GymClass gym_class;
};

void repairs_for_24(benchmark::State& state) {
  const Asked asked("sat-24", "sat-two-clocks");
  for (auto _ : state) benchmark::DoNotOptimize(app::repair_class(asked.request(), asked.text));
}
BENCHMARK(repairs_for_24)->UseRealTime()->Unit(benchmark::kMillisecond);

void repairs_for_19_one_bar_out_in_rain(benchmark::State& state) {
  const Asked asked("wed-19-for-12", "wed-every-three");
  for (auto _ : state) benchmark::DoNotOptimize(app::repair_class(asked.request(), asked.text));
}
BENCHMARK(repairs_for_19_one_bar_out_in_rain)->UseRealTime()->Unit(benchmark::kMillisecond);

/// Fifteen minutes too long: what to cut is looked for too.
void repairs_for_24_over_the_hour(benchmark::State& state) {
  Asked asked("sat-24", "sat-two-clocks");
  asked.gym_class.length = 60 * base::minute;
  for (auto _ : state) benchmark::DoNotOptimize(app::repair_class(asked.request(), asked.text));
}
BENCHMARK(repairs_for_24_over_the_hour)->UseRealTime()->Unit(benchmark::kMillisecond);

void fits_for_24_with_shared_kit(benchmark::State& state) {
  const Asked asked("sat-24", "sat-two-clocks");
  solver::CbcSolver solver;
  for (auto _ : state) benchmark::DoNotOptimize(app::fit_class(asked.request(), solver));
}
BENCHMARK(fits_for_24_with_shared_kit)->UseRealTime()->Unit(benchmark::kMillisecond);

void warm_up_for_24(benchmark::State& state) {
  const Asked asked("sat-24", "sat-two-clocks");
  solver::CbcSolver solver;
  for (auto _ : state) benchmark::DoNotOptimize(app::warm_up_class(asked.request(), {}, solver));
}
BENCHMARK(warm_up_for_24)->UseRealTime()->Unit(benchmark::kMillisecond);

void pairs_of_13(benchmark::State& state) {
  const Asked asked("tue-pairs-13", "tue-pairs");
  solver::CbcSolver solver;
  for (auto _ : state) benchmark::DoNotOptimize(app::team_class(asked.request(), {}, solver));
}
BENCHMARK(pairs_of_13)->UseRealTime()->Unit(benchmark::kMillisecond);

void what_to_cut_for_24(benchmark::State& state) {
  const Asked asked("sat-24", "sat-two-clocks");
  const app::ClassRequest request = asked.request();
  const auto gathered = app::gather(request);
  const auto rehearsed = app::rehearse_class(request, *gathered);
  for (auto _ : state) benchmark::DoNotOptimize(app::hour_class(request, *gathered, *rehearsed));
}
BENCHMARK(what_to_cut_for_24)->UseRealTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace repwright

BENCHMARK_MAIN();
