#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <vector>

#include "base/random.hpp"
#include "body/balance.hpp"
#include "unit/body/bodies.hpp"
#include "unit/body/per_rep.hpp"

namespace repwright::body {
namespace {

const Constants constants;

/// With so much of a group out of reach when the reserve is spent.
Constants out_of_breath(double share) {
  Constants out;
  out.breathless = share;
  return out;
}

double between(double low, double high) {
  return low + (high - low) * 1e-4 * static_cast<double>(*rc::gen::inRange(0, 10001));
}

/// Somebody within what a class holds, and a way of working.
struct Somebody {
  Body body;
  Effort effort;
};
Somebody somebody() {
  const Row row = *rc::gen::element(pull_up, push_up, squat, sit_up, burpee, step_up);
  Somebody out;
  out.body.critical_speed = between(2.4, 4.6);
  out.body.reserve_distance = between(90, 250);
  out.body.recovery = between(0.7, 1.4);
  out.effort = reps(row, between(5, 150), between(0.7, 1.2));
  return out;
}

/// Anybody out of a fixed stream, the kinds of reps in turn.
class Crowd {
 public:
  double between(double low, double high) { return low + (high - low) * luck_.uniform(); }
  Somebody next() {
    const std::array rows{pull_up, push_up, squat, sit_up, burpee, step_up};
    Somebody out;
    out.body.critical_speed = between(2.4, 4.6);
    out.body.reserve_distance = between(90, 250);
    out.body.recovery = between(0.7, 1.4);
    out.effort = reps(rows.at(drawn_++ % rows.size()), between(5, 150), between(0.7, 1.2));
    return out;
  }

 private:
  base::Stream luck_{{1}, 0, 0, base::Purpose::Search};
  std::size_t drawn_ = 0;
};

/// How far a set by closed form is from the same set rep by rep.
struct Apart {
  int sets = 0, other_count = 0;
  std::vector<double> time, drains, reserve;

  void add(const Somebody& who, double wanted, double end, double pause, const Constants& with) {
    State state = fresh(who.body, 1, with);
    PerRep slow(who.body, with);
    for (int set = 0; set < 3; ++set) {
      const double began = slow.clock;
      const double expected = slow.set(who.effort, wanted, end);
      const SetPlan plan{.wanted = wanted, .pacing = {.end = end}};
      const SetDone done = work(state, who.body, who.effort, plan, with);
      ++sets;
      if (done.units != expected) ++other_count;
      if (done.units != expected) return;
      const auto group = index_of(who.effort.group);
      if (expected > 0) time.push_back(std::abs(done.seconds / (slow.clock - began) - 1));
      drains.push_back(std::abs(fatigue(state, group, with) - slow.fatigue(group)) / who.effort.drain);
      reserve.push_back(std::abs(state.reserve - slow.reserve) / slow.full);
      rest(state, who.body, pause, with);
      slow.rest(pause);
    }
  }
};

double at_share(std::vector<double> values, double share) {
  std::ranges::sort(values);
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

void follow_rep_by_rep(const Constants& with, double other_counts) {
  Crowd crowd;
  Apart apart;
  for (int k = 0; k < 4000; ++k) {
    const Somebody who = crowd.next();
    const double wanted = std::floor(crowd.between(1, 60));
    const double end = crowd.between(120, 2400);
    apart.add(who, wanted, end, crowd.between(3, 120), with);
  }
  EXPECT_LE(apart.other_count, other_counts * apart.sets);
  EXPECT_LE(at_share(apart.time, .5), 1e-4);
  EXPECT_LE(at_share(apart.time, .99), .01);
  EXPECT_LE(at_share(apart.time, 1), .12);
  EXPECT_LE(at_share(apart.drains, .99), 1.0);
  EXPECT_LE(at_share(apart.reserve, .99), .04);
}

// The errors that docs/models/body.md states, over people, movements, sets and places in a piece.
TEST(ClosedForms, FollowTheDescriptionRepByRep) {
  follow_rep_by_rep(constants, .015);
}

TEST(ClosedForms, FollowItOutOfBreath) {
  follow_rep_by_rep(out_of_breath(.6), .02);
}

RC_GTEST_PROP(ClosedForms, LetAPersonStartWhenTheySaidTheyWould, ()) {
  const Somebody who = somebody();
  const Constants with = out_of_breath(between(0, .9));
  State state = fresh(who.body, 1, with);
  const double wanted = *rc::gen::inRange(5, 200);
  work(state, who.body, who.effort, {.wanted = wanted}, with);
  const double left = *rc::gen::inRange(1, 60);
  const double wait = break_for(state, who.body, who.effort, left, with);
  RC_ASSERT(wait >= with.shortest_break);
  RC_ASSERT(std::isfinite(wait));
  rest(state, who.body, wait, with);
  RC_ASSERT(ready_in(state, who.body, who.effort, left, with) <= 1 + with.reaction);
  rest(state, who.body, 1, with);
  RC_ASSERT(work(state, who.body, who.effort, {.wanted = left}, with).units >= 1);
}

RC_GTEST_PROP(ClosedForms, CountOnlyWhatEndsBeforeTheBell, ()) {
  const Somebody who = somebody();
  const double bell = between(0.1, 120);
  State state = fresh(who.body, 1, constants);
  const SetDone cut = work(state, who.body, who.effort, {.wanted = 500, .seconds = bell}, constants);
  RC_ASSERT(cut.seconds <= bell + 1e-9);
  RC_ASSERT(cut.units == std::floor(cut.units));
}

// One rep more than the bell allowed ends after it. A set guesses from its own length how well the muscle
// recovers meanwhile, so the two sets differ a little: one such rep in some 20,000, hunted for, seems to end
// 2 to 4 % early.
TEST(ClosedForms, CountAllThatEndsBeforeTheBell) {
  Crowd crowd;
  int rung = 0;
  for (int k = 0; k < 20000; ++k) {
    const Somebody who = crowd.next();
    const double bell = crowd.between(0.1, 120);
    State state = fresh(who.body, 1, constants);
    State longer = state;
    const SetDone cut = work(state, who.body, who.effort, {.wanted = 500, .seconds = bell}, constants);
    if (!cut.bell) continue;
    ++rung;
    const SetDone more = work(longer, who.body, who.effort, {.wanted = cut.units + 1}, constants);
    ASSERT_GE(more.seconds, bell) << "set " << k;
  }
  EXPECT_GE(rung, 10000);
}

// Physiology 11.11: unbroken maximum within one rep of N, pacing idle excluded; lone run within 1.5 % of the
// two-parameter hyperbola (Monod & Scherrer 1965; Hughson, Orok & Staudt 1984).
TEST(ClosedForms, ReproduceTheTestsThatTheyAreMadeFrom) {
  for (const Profile& p : profiles) {
    const Body body = body_of(p);
    for (const double best : {p.pull, p.push, p.sit}) {
      Effort effort = reps(push_up, best, p.cadence);
      effort.cost = 0.01;
      State state = fresh(body, 1, constants);
      const SetDone done = work(state, body, effort, {.wanted = 1e6, .to_failure = true}, constants);
      EXPECT_NEAR(done.units, best, 1);
    }
    for (const double metres : {2000.0, 3000.0, 5000.0}) {
      Piece run;
      run.round = {{running(), metres, 0}};
      const double two_parameters = (metres - p.reserve_distance) / p.critical_speed;
      if (two_parameters > constants.durability_from) continue;
      EXPECT_NEAR(alone_at_best(body, run, two_parameters, constants).seconds, two_parameters,
                  .015 * two_parameters);
    }
  }
}

RC_GTEST_PROP(ClosedForms, NeverRunSlowerWithMoreSpeedOrReserve, ()) {
  Body body = somebody().body;
  const double metres = between(200, 5000);
  Piece run;
  run.round = {{running(), metres, 0}};
  const double before = alone_at_best(body, run, metres / 3, constants).seconds;
  body.critical_speed *= between(1, 1.2);
  body.reserve_distance *= between(1, 1.2);
  body.top_speed = 9;
  RC_ASSERT(alone_at_best(body, run, metres / 3, constants).seconds <= before + 0.1);
}

RC_GTEST_PROP(ClosedForms, NeverLoseRepsByALongerRestOrALargerSet, ()) {
  Somebody who = somebody();
  const Constants with = out_of_breath(between(0, .9));
  const auto second_set = [&](double best, double pause) {
    Effort effort = who.effort;
    effort.best = best;
    effort.theta = 1 / (1 + best / 30);
    effort.drain = effort.theta / 30;
    State state = fresh(who.body, 1, with);
    const SetPlan all{.wanted = 1e4, .to_failure = true};
    const double first = work(state, who.body, effort, all, with).units;
    rest(state, who.body, pause, with);
    return std::pair{first, work(state, who.body, effort, all, with).units};
  };
  const double best = who.effort.best, pause = between(0, 200);
  const auto [first, second] = second_set(best, pause);
  const auto rested = second_set(best, pause * between(1, 3));
  const auto stronger = second_set(best * between(1, 1.5), pause);
  RC_ASSERT(rested.second >= second);
  RC_ASSERT(stronger.first >= first);
  RC_ASSERT(stronger.first + stronger.second + 1 >= first + second);
}

// Physiology 11.11. The set-break rule works in whole reps ('a fifth of the best set, rounded'), so somebody
// a little stronger may wait for a second rep where the other starts with one: never more than 5 % of the
// score.
RC_GTEST_PROP(ClosedForms, NeverScoreWorseWithMoreSpeedReserveOrReps, ()) {
  const Constants with = out_of_breath(between(0, .6));
  Profile p = *rc::gen::elementOf(profiles);
  p.critical_speed = between(2.5, 4.6);
  p.pull = between(2, 40);
  const auto seconds = [&](const Profile& who) {
    Piece piece;
    piece.before = {{running(), 800, 8}};
    piece.round = {{reps(pull_up, who.pull, who.cadence), 4, 4},
                   {reps(squat, who.squat, who.cadence), 15, 4}};
    piece.rounds = 5;
    piece.after = {{running(), 800, 0}};
    return alone_at_best(body_of(who), piece, 1200, with).seconds;
  };
  const double before = seconds(p);
  p.critical_speed *= between(1, 1.15);
  p.reserve_distance *= between(1, 1.15);
  p.pull *= between(1, 1.15);
  RC_ASSERT(seconds(p) <= 1.05 * before);
}

}  // namespace
}  // namespace repwright::body
