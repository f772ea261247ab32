#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "app/parallel.hpp"
#include "rehearsal/luck.hpp"
#include "rehearsal/pacing.hpp"
#include "support/plans.hpp"

/// Laws of a rehearsal, whatever the class.
namespace repwright {
namespace {

test::Stage any_class() {
  return test::mixed_class({.people = *rc::gen::inRange(1, 9),
                            .steps = *rc::gen::inRange(1, 7),
                            .seconds = static_cast<double>(*rc::gen::inRange(30, 600)),
                            .bars = *rc::gen::inRange(0, 4)});
}

RC_GTEST_PROP(Rehearsal, IsTheSameOnOneThreadAndOnTwo, ()) {
  const test::Stage stage = any_class();
  const auto seed = *rc::gen::arbitrary<std::uint64_t>();
  RC_ASSERT(*rehearsal::rehearse(stage.request(20, seed)) ==
            *rehearsal::rehearse(stage.request(20, seed), app::in_parallel(2)));
}

/// Adds up each person's times and counts who stands where.
class Books final : public rehearsal::Recorder {
 public:
  void worked(rehearsal::Part part, const rehearsal::Stint& stint, const rehearsal::Player&) override {
    RC_ASSERT(stint.end >= stint.start);
    RC_ASSERT(stint.work + stint.rest + stint.wait <= stint.end - stint.start);
    RC_ASSERT(stint.start >= ends[part.person]);
    ends[part.person] = stint.end;
  }
  void queued(int, int, std::int64_t from, std::int64_t to) override { RC_ASSERT(to >= from); }
  void queue_length(int, int waiting) override { RC_ASSERT(waiting >= 0); }
  void lap(rehearsal::Part, int, std::int64_t) override {}
  std::map<int, std::int64_t> ends;
};

rehearsal::RunSetting one_run(const test::Stage& stage, std::uint64_t run) {
  rehearsal::RunSetting setting = rehearsal::even_day(stage.cast, stage.timetable);
  rehearsal::draw_run(setting, stage.cast, stage.timetable, {base::Seed{3}, run}, rehearsal::Bodies::Drawn);
  setting.targets.assign(1, std::vector<double>(stage.cast.ids.size(), 600));
  return setting;
}

RC_GTEST_PROP(Floor, LosesNobodyAndNoTime, ()) {
  const test::Stage stage = any_class();
  rehearsal::Floor floor(stage.plan, stage.timetable, stage.constants, rehearsal::Crowd::Shared);
  Books books;
  const auto setting = one_run(stage, *rc::gen::inRange<std::uint64_t>(0, 1000));
  floor.play(setting, &books);
  for (const rehearsal::PieceResult& result : floor.results()[0]) {
    RC_ASSERT(result.took_part);
    std::int64_t booked = 0;
    for (const std::int64_t loss : result.losses) booked += loss;
    // The reaction to the start signal is nobody's loss.
    RC_ASSERT(booked <= result.home - result.zero);
    RC_ASSERT(booked >= result.home - result.zero - 2000 - 2 * result.rounds * 6);
  }
}

RC_GTEST_PROP(Floor, PlaysEachAsIfAloneWhenThereArePlacesForAll, ()) {
  test::Stage stage = any_class();
  const auto people = static_cast<int>(stage.cast.ids.size());
  for (rehearsal::FloorPlace& place : stage.plan.places) place.count = people;
  const auto setting = one_run(stage, 1);
  rehearsal::Floor together(stage.plan, stage.timetable, stage.constants, rehearsal::Crowd::Shared);
  rehearsal::Floor apart(stage.plan, stage.timetable, stage.constants, rehearsal::Crowd::Alone);
  together.play(setting, nullptr);
  apart.play(setting, nullptr);
  for (std::size_t p = 0; p < stage.cast.ids.size(); ++p) {
    RC_ASSERT(together.results()[0][p].counts.reps == apart.results()[0][p].counts.reps);
    RC_ASSERT(together.results()[0][p].home == apart.results()[0][p].home);
  }
}

RC_GTEST_PROP(Luck, DoesNotChangeWhenSomebodyJoins, ()) {
  test::Stage few = test::mixed_class({.people = 3, .seconds = 120, .bars = 0});
  test::Stage more = test::mixed_class({.people = 5, .seconds = 120, .bars = 0});
  const auto run = *rc::gen::inRange<std::uint64_t>(0, 1000);
  rehearsal::Floor small(few.plan, few.timetable, few.constants, rehearsal::Crowd::Shared);
  rehearsal::Floor large(more.plan, more.timetable, more.constants, rehearsal::Crowd::Shared);
  const auto small_run = one_run(few, run);
  const auto large_run = one_run(more, run);
  small.play(small_run, nullptr);
  large.play(large_run, nullptr);
  for (std::size_t p = 0; p < 3; ++p)
    RC_ASSERT(small.results()[0][p].counts.reps == large.results()[0][p].counts.reps);
}

double lone_reps(const test::Stage& stage) {
  const auto expectations = rehearsal::expect(stage.plan, stage.timetable, stage.constants, stage.cast);
  rehearsal::RunSetting setting = rehearsal::even_day(stage.cast, stage.timetable);
  rehearsal::set_targets(setting, expectations, stage.cast);
  rehearsal::Floor floor(stage.plan, stage.timetable, stage.constants, rehearsal::Crowd::Alone);
  floor.play(setting, nullptr);
  return floor.results()[0][0].counts.reps;
}

RC_GTEST_PROP(Floor, NeverScoresAFitterLonePersonLower, ()) {
  test::Stage stage = test::mixed_class({.people = 1, .seconds = 900, .bars = 0});
  body::Body& body = stage.cast.median[0];
  const double before = lone_reps(stage);
  if (*rc::gen::arbitrary<bool>())
    body.critical_speed *= 1.15;
  else
    for (double& best : body.best_set) best *= 1.3;
  RC_ASSERT(lone_reps(stage) >= before - 1);
}

RC_GTEST_PROP(Floor, EndsForEveryBodyHoweverWeakOrStrong, ()) {
  test::Stage stage = test::mixed_class({.people = 1, .seconds = 900, .bars = 0});
  body::Body& body = stage.cast.median[0];
  const auto factor = [] { return std::pow(10.0, *rc::gen::inRange(-30, 16) / 10.0); };
  for (double& best : body.best_set) best *= factor();
  body.critical_speed *= std::clamp(factor(), 0.3, 2.0);
  body.reserve_distance *= std::clamp(factor(), 0.1, 5.0);
  const double reps = lone_reps(stage);
  RC_ASSERT(std::isfinite(reps));
  RC_ASSERT(reps >= 0);
}

}  // namespace
}  // namespace repwright
