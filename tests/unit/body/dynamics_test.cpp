#include "body/dynamics.hpp"

#include <gtest/gtest.h>

#include "body/balance.hpp"
#include "unit/body/bodies.hpp"

namespace repwright::body {
namespace {

const Constants constants;

Body runner(double critical_speed, double reserve) {
  Body body;
  body.critical_speed = critical_speed;
  body.reserve_distance = reserve;
  return body;
}

// T11.1: the currency of whole-body work (ours, after the running cost of ACSM's Guidelines).
TEST(Dynamics, CountsReserveAndCriticalRateInOxygen) {
  const State state = fresh(runner(3.4, 160), 1, constants);
  EXPECT_NEAR(state.critical_rate, 44.3, 1e-9);
  EXPECT_NEAR(state.reserve_full, 32.0, 1e-9);
}

// T11.4, exact as given: ten push-ups of a person with 30, then 30 s of rest.
TEST(Dynamics, WorksTenPushUpsAsTheWorkedExample) {
  const Body body = runner(3.6, 180);
  const Effort effort = reps(push_up, 30, 1);
  EXPECT_NEAR(effort.theta, 0.5, 1e-9);
  EXPECT_NEAR(effort.drain, 0.0166667, 1e-6);
  State state = fresh(body, 1, constants);
  const SetDone done = work(state, body, effort, {.wanted = 10}, constants);
  EXPECT_EQ(done.units, 10);
  EXPECT_NEAR(done.seconds, 18.541, 0.001 * 18.541);
  EXPECT_NEAR(state.pools[0][0], .12234, 0.001 * .12234);
  EXPECT_NEAR(state.pools[0][1], .04140, 0.001 * .04140);
  EXPECT_NEAR(available(state, effort, constants), 20.176, 0.001 * 20.176);
  EXPECT_NEAR(state.reserve, 36.0, 0.001);
  rest(state, body, 30, constants);
  EXPECT_NEAR(available(state, effort, constants), 23.410, 0.001 * 23.410);
  EXPECT_NEAR(fatigue(state, 0, constants), .07420 + .03563, 0.001 * .11);
}

struct Failure {
  Row row;
  double best;
  double rest_seconds;
  std::array<double, 4> sets;
};

// T11.5: sets to failure, +-1 rep.
TEST(Dynamics, LosesRepsOverSetsToFailure) {
  const std::array<Failure, 9> cases{{
      {push_up, 30, 60, {30, 16, 15, 15}},
      {push_up, 30, 120, {30, 23, 22, 21}},
      {push_up, 30, 300, {30, 28, 28, 28}},
      {pull_up, 10, 60, {10, 5, 5, 5}},
      {pull_up, 10, 120, {10, 7, 7, 7}},
      {pull_up, 10, 300, {10, 9, 9, 9}},
      {squat, 60, 60, {60, 41, 36, 33}},
      {squat, 60, 120, {60, 49, 44, 41}},
      {squat, 60, 300, {60, 54, 53, 52}},
  }};
  const Body body = runner(3.6, 170);
  for (const Failure& c : cases) {
    State state = fresh(body, 1, constants);
    const Effort effort = reps(c.row, c.best, 1);
    for (const double expected : c.sets) {
      const SetDone done = work(state, body, effort, {.wanted = 1e6, .to_failure = true}, constants);
      EXPECT_NEAR(done.units, expected, 1) << "best " << c.best << ", rest " << c.rest_seconds;
      rest(state, body, c.rest_seconds, constants);
    }
  }
}

// One true best single after another: after a minute most people lift it again (Matuszak et al. 2003, J
// Strength Cond Res 17:634; from memory).
TEST(Dynamics, TriesARepAgainBeforeTheLastOfItHasRecovered) {
  Constants patient, grinding;
  grinding.grind = .25;
  const Body body = runner(3.6, 180);
  const Effort single = reps(push_up, 1, 1);
  const auto wait = [&](const Constants& with) {
    State state = fresh(body, 1, with);
    EXPECT_EQ(work(state, body, single, {.wanted = 2}, with).units, 1);
    return ready_in(state, body, single, 1, with);
  };
  EXPECT_GT(wait(patient), 600);
  EXPECT_LT(wait(grinding), 180);
  EXPECT_EQ(ready_in(fresh(body, 1, grinding), body, reps(push_up, .8, 1), 1, grinding), 0);
}

}  // namespace
}  // namespace repwright::body
