#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

#include "app/parallel.hpp"
#include "peer/twin.hpp"

/// The same class on the floor and in SimPy, turn by turn: prints what one class costs each of them, and how
/// many times faster the floor is on one thread and on all of this machine (SimPy has one).
namespace {

using namespace repwright;

/// Seconds per class, `runs` of them on so many threads.
double on_the_floor(const test::Stage& stage, int runs, int threads) {
  const auto start = std::chrono::steady_clock::now();
  app::in_parallel(threads)(threads, [&](int share) {
    rehearsal::Floor floor(stage.plan, stage.timetable, stage.constants, rehearsal::Crowd::Shared);
    for (int run = share; run < runs; run += threads)
      floor.play(test::twin_setting(stage, static_cast<std::uint64_t>(run)), nullptr);
  });
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count() / runs;
}

double in_simpy(const test::Stage& stage, int runs) {
  const nlohmann::json twin = test::ask_twin(test::twin_question(stage, rehearsal::step_noise, runs));
  return twin["seconds"].get<double>() / runs;
}

double median(std::vector<double> values) {
  std::ranges::nth_element(values, values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2));
  return values[values.size() / 2];
}

}  // namespace

int main() {
  if (!test::has_simpy()) {
    std::puts("python3-simpy3 is not installed: nothing to compare with");
    return 0;
  }
  const test::Stage stage = test::twin_stage();
  const int threads = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  std::vector<double> simpy, one, all, ratio_one, ratio_all;
  for (int turn = 0; turn < 5; ++turn) {
    simpy.push_back(in_simpy(stage, 50));
    one.push_back(on_the_floor(stage, 2500, 1));
    all.push_back(on_the_floor(stage, 5000, threads));
    ratio_one.push_back(simpy.back() / one.back());
    ratio_all.push_back(simpy.back() / all.back());
  }
  std::printf(
      "24 people, 8 rounds; medians of 5 turns\nSimPy %.2f ms\nthe floor, 1 thread %.4f ms, %.0f times "
      "faster\n",
      1e3 * median(simpy), 1e3 * median(one), median(ratio_one));
  std::printf("the floor, %d threads %.4f ms, %.0f times faster\n", threads, 1e3 * median(all),
              median(ratio_all));
}
