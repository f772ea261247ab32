#include <gtest/gtest.h>

#include <cmath>

#include "base/statistics.hpp"
#include "peer/twin.hpp"

/// The floor against a general-purpose discrete-event simulator, SimPy 3 (Debian: python3-simpy3): the same
/// people, places and closed forms, two programs.
namespace repwright {
namespace {

std::vector<rehearsal::PieceResult> play(const test::Stage& stage, std::optional<std::uint64_t> run) {
  rehearsal::Floor floor(stage.plan, stage.timetable, stage.constants, rehearsal::Crowd::Shared);
  const rehearsal::RunSetting setting = test::twin_setting(stage, run);
  floor.play(setting, nullptr);
  return floor.results()[0];
}

TEST(ClassTwin, ComesHomeWithinATenthOfASecondOfTheFloor) {
  if (!test::has_simpy()) GTEST_SKIP() << "python3-simpy3 is not installed";
  const test::Stage stage = test::twin_stage();
  const nlohmann::json twin = test::ask_twin(test::twin_question(stage, 0, 1));
  const auto results = play(stage, std::nullopt);
  double waited = 0;
  for (std::size_t p = 0; p < results.size(); ++p) {
    const auto& result = results[p];
    EXPECT_NEAR(rehearsal::seconds_of(result.home - result.zero), twin["home"][0][p].get<double>(), 0.1) << p;
    EXPECT_NEAR(rehearsal::seconds_of(result.queued), twin["wait"][0][p].get<double>(), 0.1) << p;
    waited += rehearsal::seconds_of(result.queued);
  }
  EXPECT_GT(waited, 300) << "a class in which nobody queues would prove nothing";
}

TEST(ClassTwin, GivesTheSameMeansWithLuckOfItsOwn) {
  if (!test::has_simpy()) GTEST_SKIP() << "python3-simpy3 is not installed";
  constexpr std::size_t runs = 100;
  const test::Stage stage = test::twin_stage();
  const nlohmann::json twin = test::ask_twin(test::twin_question(stage, rehearsal::step_noise, runs));
  std::vector<double> theirs_home(runs), theirs_wait(runs), ours_home(runs), ours_wait(runs);
  for (std::size_t run = 0; run < runs; ++run) {
    const auto results = play(stage, run);
    for (std::size_t p = 0; p < results.size(); ++p) {
      ours_home[run] += rehearsal::seconds_of(results[p].home - results[p].zero) / 24;
      ours_wait[run] += rehearsal::seconds_of(results[p].queued) / 24;
      theirs_home[run] += twin["home"][run][p].get<double>() / 24;
      theirs_wait[run] += twin["wait"][run][p].get<double>() / 24;
    }
  }
  // Four standard errors of the difference of two means: one false alarm in 16,000.
  const auto expect_alike = [](const std::vector<double>& a, const std::vector<double>& b) {
    const base::Summary x = base::summarise(a), y = base::summarise(b);
    EXPECT_NEAR(x.mean, y.mean, 4 * std::sqrt((x.sd * x.sd + y.sd * y.sd) / runs));
  };
  expect_alike(ours_home, theirs_home);
  expect_alike(ours_wait, theirs_wait);
}

}  // namespace
}  // namespace repwright
