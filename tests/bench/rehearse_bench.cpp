#include <benchmark/benchmark.h>

#include "app/parallel.hpp"
#include "support/plans.hpp"

/// What a rehearsal costs, and how that grows. Names say the size.
namespace repwright {
namespace {

void rehearse_class(benchmark::State& state, const test::MixedPiece& piece, int runs, int threads) {
  const test::Stage stage = test::mixed_class(piece);
  const rehearsal::ForEach for_each = app::in_parallel(threads);
  for (auto _ : state) benchmark::DoNotOptimize(rehearsal::rehearse(stage.request(runs), for_each));
  state.SetComplexityN(state.range(0));
}

void rehearse_24_people_24_minutes_x1000(benchmark::State& state) {
  rehearse_class(state, {}, 1000, static_cast<int>(state.range(0)));
}
BENCHMARK(rehearse_24_people_24_minutes_x1000)
    ->ArgName("threads")
    ->Arg(1)
    ->Arg(2)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

void rehearse_n_people_24_minutes_x100(benchmark::State& state) {
  const int people = static_cast<int>(state.range(0));
  rehearse_class(state, {.people = people, .bars = people / 3}, 100, 1);
}
BENCHMARK(rehearse_n_people_24_minutes_x100)
    ->RangeMultiplier(2)
    ->Range(12, 96)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

void rehearse_24_people_n_minutes_x100(benchmark::State& state) {
  rehearse_class(state, {.seconds = 60.0 * static_cast<double>(state.range(0))}, 100, 1);
}
BENCHMARK(rehearse_24_people_n_minutes_x100)
    ->RangeMultiplier(2)
    ->Range(6, 48)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

void rehearse_24_people_24_minutes_xn(benchmark::State& state) {
  rehearse_class(state, {}, static_cast<int>(state.range(0)), 1);
}
BENCHMARK(rehearse_24_people_24_minutes_xn)
    ->RangeMultiplier(2)
    ->Range(125, 1000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

}  // namespace
}  // namespace repwright

BENCHMARK_MAIN();
