#include <chrono>
#include <cstdio>

#include "peer/twin.hpp"

/// The same class on the floor and in SimPy, one after the other on one thread: prints seconds for one class
/// each.
int main() {
  using namespace repwright;
  using Clock = std::chrono::steady_clock;
  if (!test::has_simpy()) {
    std::puts("python3-simpy3 is not installed: nothing to compare with");
    return 0;
  }
  constexpr int runs = 100;
  constexpr int own_runs = 50 * runs;
  const test::Stage stage = test::twin_stage();
  const nlohmann::json twin = test::ask_twin(test::twin_question(stage, rehearsal::step_noise, runs));
  const double theirs = twin["seconds"].get<double>() / runs;
  rehearsal::Floor floor(stage.plan, stage.timetable, stage.constants, rehearsal::Crowd::Shared);
  const auto start = Clock::now();
  for (std::uint64_t run = 0; run < own_runs; ++run) floor.play(test::twin_setting(stage, run), nullptr);
  const double ours = std::chrono::duration<double>(Clock::now() - start).count() / own_runs;
  std::printf("24 people, 8 rounds: SimPy %.2f ms, the floor %.4f ms, %.0f times faster\n", 1e3 * theirs,
              1e3 * ours, theirs / ours);
}
