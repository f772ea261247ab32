#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "base/random.hpp"
#include "base/statistics.hpp"
#include "rehearsal/floor.hpp"
#include "rehearsal/luck.hpp"
#include "support/plans.hpp"

/// The floor against a general-purpose discrete-event simulator, SimPy 3 (Debian: python3-simpy3): the same
/// people, places and seconds, two programs. The body stays out: every stretch of work has its length.
namespace repwright {
namespace {

using nlohmann::json;
using rehearsal::Op;
using rehearsal::OpKind;

constexpr int people = 12;
constexpr int rounds = 5;
constexpr int steps = 4;

double middle_seconds(int person, int step) {
  return 14 + 3.7 * step + 1.31 * ((person * 7 + step * 5) % 11);
}
int place_of(int step) {
  return step == 0 ? 0 : step == 2 ? 1 : -1;
}
double transition_of(int person) {
  return 2.5 + 0.25 * person;
}
double late_of(int person) {
  return person == 4 ? 33 : 0;
}

json world(double spread, int runs) {
  json all = json::array();
  for (int p = 0; p < people; ++p) {
    json lines = json::array();
    for (int s = 0; s < steps; ++s) lines.push_back({middle_seconds(p, s), place_of(s)});
    all.push_back(
        {{"late_s", late_of(p)}, {"transition_s", transition_of(p)}, {"rounds", rounds}, {"steps", lines}});
  }
  return {{"places", {3, 4}}, {"people", all}, {"spread", spread}, {"runs", runs}};
}

bool has_simpy() {
  return std::system("/usr/bin/python3 -c 'import simpy' 2>/dev/null") == 0;
}

json ask_twin(const json& world) {
  const std::string in = ::testing::TempDir() + "class_twin_in.json";
  const std::string out = ::testing::TempDir() + "class_twin_out.json";
  std::ofstream(in) << world;
  const std::string command =
      "/usr/bin/python3 " REPWRIGHT_SOURCE_DIR "/tests/peer/class_twin.py <" + in + " >" + out;
  EXPECT_EQ(std::system(command.c_str()), 0);
  std::ifstream answer(out);
  return json::parse(answer);
}

/// The same class for the floor; `luck` null: no noise.
test::Stage stage_of(base::Stream* luck, double spread) {
  test::Stage stage;
  stage.plan.places = {{{"bar"}, 3}, {{"rower"}, 4}};
  stage.timetable.pieces.emplace_back();
  stage.timetable.boxes.emplace_back().piece = 0;
  rehearsal::ScriptedPiece piece;
  for (int p = 0; p < people; ++p) {
    rehearsal::Script script;
    for (int s = 0; s < steps; ++s) {
      rehearsal::Task& task = script.tasks.emplace_back();
      task.effort = test::hold_spec();
      task.unit = domain::Unit::Seconds;
      task.place = place_of(s);
    }
    for (int k = 0; k < rounds * steps; ++k) {
      const double factor = luck ? luck->lognormal(spread) : 1;
      script.ops.push_back(
          {.kind = OpKind::Work, .amount = factor * middle_seconds(p, k % steps), .task = k % steps});
    }
    piece.scripts.push_back(script);
    stage.plan.late.push_back(late_of(p));
    stage.cast.ids.push_back({std::to_string(p)});
    stage.cast.median.emplace_back().transition = transition_of(p);
  }
  stage.plan.pieces.push_back(piece);
  return stage;
}

std::vector<rehearsal::PieceResult> play(const test::Stage& stage) {
  rehearsal::Floor floor(stage.plan, stage.timetable, stage.constants, rehearsal::Crowd::Shared);
  rehearsal::RunSetting setting = rehearsal::even_day(stage.cast, stage.timetable);
  setting.targets.assign(1, std::vector<double>(people, 1000));
  floor.play(setting, nullptr);
  return floor.results()[0];
}

TEST(ClassTwin, ComesHomeWithinATenthOfASecondOfTheFloor) {
  if (!has_simpy()) GTEST_SKIP() << "python3-simpy3 is not installed";
  const json twin = ask_twin(world(0, 1));
  const auto results = play(stage_of(nullptr, 0));
  double waited = 0;
  for (std::size_t p = 0; p < people; ++p) {
    const auto& result = results[p];
    EXPECT_NEAR(rehearsal::seconds_of(result.home - result.zero), twin["home"][0][p].get<double>(), 0.1) << p;
    EXPECT_NEAR(rehearsal::seconds_of(result.queued), twin["wait"][0][p].get<double>(), 0.1) << p;
    waited += rehearsal::seconds_of(result.queued);
  }
  EXPECT_GT(waited, 60) << "a class in which nobody queues would prove nothing";
}

TEST(ClassTwin, WaitsAsLongInTheMeanWithLuckOfItsOwn) {
  if (!has_simpy()) GTEST_SKIP() << "python3-simpy3 is not installed";
  constexpr int runs = 400;
  constexpr double spread = 0.3;
  const json twin = ask_twin(world(spread, runs));
  std::vector<double> theirs_home, theirs_wait, ours_home, ours_wait;
  for (std::size_t run = 0; run < runs; ++run) {
    base::Stream luck(base::Seed{9}, run, 0, base::Purpose::Search);
    double home = 0, wait = 0, their_home = 0, their_wait = 0;
    const auto results = play(stage_of(&luck, spread));
    for (std::size_t p = 0; p < people; ++p) {
      const auto& result = results[p];
      home += rehearsal::seconds_of(result.home - result.zero) / people;
      wait += rehearsal::seconds_of(result.queued) / people;
      their_home += twin["home"][run][p].get<double>() / people;
      their_wait += twin["wait"][run][p].get<double>() / people;
    }
    ours_home.push_back(home);
    ours_wait.push_back(wait);
    theirs_home.push_back(their_home);
    theirs_wait.push_back(their_wait);
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
