#include "body/engine.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "body/balance.hpp"
#include "body/marks.hpp"
#include "unit/body/bodies.hpp"
#include "unit/body/support.hpp"

namespace repwright::body {
namespace {

using domain::Unit;

Constants without_kept_reserve() {
  Constants constants;
  constants.reserve_kept = 0;
  return constants;
}
const Constants plain = without_kept_reserve();

Body runner(double critical_speed, double reserve, double top_speed) {
  Body body;
  body.critical_speed = critical_speed;
  body.reserve_distance = reserve;
  body.top_speed = top_speed;
  return body;
}

// T1.1, T1.2, T1.5: the two-parameter hyperbola (Monod & Scherrer 1965, doi 10.1080/00140136508930810;
// running: Hughson, Orok & Staudt 1984, Int J Sports Med 5:23) is the limit of an infinite top speed.
TEST(Engine, RunsTheTwoParameterHyperbola) {
  const Body first = runner(4.21053, 189.474, 1e12), second = runner(3.44086, 129.032, 1e12);
  EXPECT_NEAR(run_seconds(first, 800, plain), 145.00, .145);
  EXPECT_NEAR(run_seconds(first, 1609.344, plain), 337.219, .337);
  EXPECT_NEAR(run_seconds(first, 3000, plain), 667.50, .667);
  EXPECT_NEAR(run_seconds(first, 5000, plain), 1142.50, 1.142);
  EXPECT_NEAR(run_seconds(second, 1200, plain), 311.25, .311);
  EXPECT_NEAR(run_seconds(second, 1609.344, plain), 430.22, .430);
}

// T1.6, T1.7: the three-parameter form (Morton 1996, Ergonomics 39:611).
TEST(Engine, RunsTheThreeParameterHyperbola) {
  const Body body = runner(3.9, 180, 7.5);
  EXPECT_NEAR(run_seconds(body, 400, plain), 74.888, .075);
  EXPECT_NEAR(run_seconds(body, 800, plain), 169.488, .170);
  EXPECT_NEAR(run_seconds(body, 1609.344, plain), 371.967, .372);
  EXPECT_NEAR(run_seconds(body, 4.5 * 250, plain), 250.0, .25);
  EXPECT_NEAR(run_seconds(body, 6.0 * 35.714, plain), 35.714, .036);
}

// T1.9: a doubling of the distance costs 4.1 % of the speed (Riegel 1981, American Scientist 69:285).
TEST(Engine, FadesAfterHalfAnHourAsRiegelSays) {
  const Body body = runner(3, 1e-6, 8);
  const double once = run_seconds(body, 12000, plain), twice = run_seconds(body, 24000, plain);
  EXPECT_NEAR(2 * once / twice, .95926, .001);
  EXPECT_EQ(durability(1799, plain), 1);
  EXPECT_NEAR(durability(3600, plain), std::pow(2, -.06 / 1.06), .001);
}

// T2.5: differential balance in running (Skiba et al. 2015, Eur J Appl Physiol 115:703): repeats of 400 m at
// 4.6 m/s with 60 s at 1.5 m/s; metres left after repeat 1, 2, 3, 5, 10.
TEST(Engine, BalancesTheReserveOverRepeats) {
  Constants constants;
  constants.reserve_recovery = 1;
  State state = fresh(runner(4.0, 180, 8), 1, constants);
  const std::array<std::pair<int, double>, 5> left{
      {{1, 127.83}, {2, 105.15}, {3, 95.30}, {5, 89.15}, {10, 87.74}}};
  int repeat = 0;
  for (const auto& [until, metres] : left) {
    for (; repeat < until; ++repeat) {
      if (repeat > 0) spend(state, {.seconds = 60, .rate = 12 * 1.5 + 3.5}, constants);
      spend(state, {.seconds = 400 / 4.6, .rate = 12 * 4.6 + 3.5}, constants);
    }
    EXPECT_NEAR(state.reserve / constants.reserve_per_metre, metres, .01 * metres) << repeat;
  }
}

// T1.15, running: 0.2 v + 3.5 (ACSM Guidelines; coefficients from secondary copies), v in m/min.
TEST(Engine, CostsWhatAcsmSays) {
  const Effort run = running();
  const Constants constants;
  EXPECT_NEAR(engine_speed(run, 35.68, constants), 160.9 / 60, .001 * 2.7);
  EXPECT_NEAR(engine_speed(run, 43.50, constants), 200.0 / 60, .001 * 3.4);
}

// T8.4: 25 C of wet-bulb globe temperature takes 3 to 4 % (Mantzios et al. 2022, doi
// 10.1249/MSS.0000000000002769).
TEST(Engine, LosesSpeedInHeat) {
  EXPECT_NEAR(1 / heat_factor(25), 1.035, .005);
  EXPECT_EQ(heat_factor(10), 1);
}

// Trade relations of the flywheel display: 2:00 per 500 m = 203 W = 997 kcal/h; 2:15 = 142 W = 790 kcal/h.
TEST(Engine, ShowsMetresAndKilocaloriesAsAFlywheelDoes) {
  const Body body;
  const Effort metres = effort_of(spec_of("rower", Unit::Metres), body, shipped_constants());
  const Effort kcal = effort_of(spec_of("rower", Unit::Kilocalories), body, shipped_constants());
  for (const auto& [seconds, watts, per_hour] : {std::tuple{120.0, 203.0, 997.0}, {135.0, 142.0, 790.0}}) {
    const double rate = metres.base + watts / metres.gain;
    EXPECT_NEAR(500 / engine_speed(metres, rate, shipped_constants()), seconds, .3);
    EXPECT_NEAR(3600 * engine_speed(kcal, rate, shipped_constants()), per_hour, 2);
  }
}

// After squats and step-ups people run 5-12 % slower (trade: common practice); the model: up to 10 % of the
// legs' fatigue, recovering as they run.
TEST(Engine, RunsSlowerOnTiredLegs) {
  const Constants constants;
  const Body body = runner(3.4, 160, 7.6);
  State rested = fresh(body, 1, constants), tired = rested;
  work(tired, body, reps(squat, 60, 1), {.wanted = 55, .to_failure = true}, constants);
  tired.reserve = rested.reserve;
  tired.clock = rested.clock;
  const SetPlan plan{.wanted = 400, .pacing = {.end = 200}};
  const double slow = work(tired, body, running(), plan, constants).seconds;
  const double quick = work(rested, body, running(), plan, constants).seconds;
  EXPECT_GT(slow, 1.01 * quick);
  EXPECT_LT(slow, 1.10 * quick);
}

TEST(Engine, StopsAtTheBellWithTheMetresSoFar) {
  const Constants constants;
  const Body body = runner(3.4, 160, 7.6);
  State cut = fresh(body, 1, constants), whole = cut;
  const Pacing pacing{.end = 600};
  const SetDone part =
      work(cut, body, running(), {.wanted = 5000, .seconds = 60, .pacing = pacing}, constants);
  EXPECT_TRUE(part.bell);
  EXPECT_EQ(part.seconds, 60);
  const SetDone same = work(whole, body, running(), {.wanted = part.units, .pacing = pacing}, constants);
  EXPECT_NEAR(same.seconds, 60, .05);
}

// T11.3: reps a minute that a group sustains for ever, N / (A tf + (1 - A) ts).
TEST(LocalFatigue, SustainsACriticalRate) {
  const Constants constants;
  const auto time = [&](Group group) {
    const auto g = index_of(group);
    return constants.fast_share[g] * constants.fast_time[g] +
           (1 - constants.fast_share[g]) * constants.slow_time[g];
  };
  for (const auto& [best, rate] : {std::pair{10.0, 6.3}, {20.0, 12.6}, {40.0, 25.3}})
    EXPECT_NEAR(60 * best / time(Group::Push), rate, .05);
  EXPECT_EQ(time(Group::Legs), 97.5);
}

// T4.4: four sets to failure as fractions of the first; the ratios of Willardson & Burkett 2005, J Strength
// Cond Res 19:23 (bench press 1.26 and 1.50, squat 1.14 and 1.28 for two and five minutes against one).
TEST(LocalFatigue, RecoversAsTheTwoPoolFit) {
  Constants constants;
  constants.recovery_drag = 0;
  const auto total = [&](const Row& row, double pause) {
    Effort effort = reps(row, 30, 1);
    effort.kind = Effort::Kind::Carry;
    effort.cost = 0;
    const Body body = runner(3.6, 170, 8);
    State state = fresh(body, 1, constants);
    double sum = 0;
    for (int set = 0; set < 4; ++set) {
      sum += work(state, body, effort, {.wanted = 1e4, .to_failure = true}, constants).units / effort.best;
      rest(state, body, pause, constants);
    }
    return sum;
  };
  for (const auto& [pause, upper, legs] :
       {std::tuple{60.0, 2.548, 2.850}, {120.0, 3.206, 3.256}, {300.0, 3.798, 3.666}}) {
    EXPECT_NEAR(total(push_up, pause), upper, .001 * upper);
    EXPECT_NEAR(total(squat, pause), legs, .001 * legs);
  }
}

}  // namespace
}  // namespace repwright::body
