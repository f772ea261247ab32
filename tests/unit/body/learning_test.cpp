#include "body/learning.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "body/level_gap.hpp"
#include "body/marks.hpp"
#include "unit/body/support.hpp"

namespace repwright::body {
namespace {

using P = Parameter;

const Constants& constants() {
  return shipped_constants();
}

BodyEstimate woman() {
  return prior({.sex = domain::Sex::Female, .age = 34}, constants());
}

struct Seen {
  ScoreSeen score;
  std::vector<Normals> drawn;
};

/// What `score` makes of the logarithm of each drawn body, with the normals behind it.
template <class Score>
Seen seen_by(const BodyEstimate& estimate, double seen, double model_sd, int draws, const Score& score) {
  Seen out{.score = {.seen = seen, .forecasts = {}, .model_sd = model_sd}, .drawn = {}};
  for (std::uint64_t run = 0; run < static_cast<std::uint64_t>(draws); ++run) {
    const DrawnBody drawn = draw_told(estimate, {3}, run, 0, constants());
    out.drawn.push_back(drawn.normals);
    out.score.forecasts.push_back(score(drawn.body));
  }
  return out;
}

struct One {
  BodyEstimate after;
  Lesson lesson;
};
One learn_one(const BodyEstimate& before, const Seen& seen) {
  const Learned learned = learn({.body = before}, seen.drawn, std::span(&seen.score, 1));
  return {learned.after.body, learned.lessons.front()};
}

double log_speed(const Body& body) {
  return std::log(body.critical_speed);
}

double sd_of(const BodyEstimate& estimate, P parameter) {
  return std::sqrt(estimate.parameters.covariance[index_of(parameter)][index_of(parameter)]);
}

TEST(Learning, DrawsTheBodiesOfTheRehearsal) {
  const BodyEstimate estimate = woman();
  const Body told = draw_told(estimate, {5}, 7, 11, constants()).body;
  const Body drawn = draw(estimate, {5}, 7, 11, constants());
  EXPECT_EQ(told.critical_speed, drawn.critical_speed);
  EXPECT_EQ(told.best_set, drawn.best_set);
  EXPECT_EQ(told.style_share, drawn.style_share);
}

// A score whose logarithm is linear in the parameters, with normal noise: the posterior is known in closed
// form (A. Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., section 14.8, from memory), here by
// `condition_normal`.
TEST(Learning, IsExactWhereEverythingIsLinearAndNormal) {
  const BodyEstimate before = woman();
  const double expected = before.parameters.mean[index_of(P::CriticalSpeed)];
  const double seen = expected + .05, sd = .08;
  const auto [after, lesson] = learn_one(before, seen_by(before, seen, sd, 4000, log_speed));
  const std::array exact{Measurement<parameter_count>{
      [](const auto& point) { return point[index_of(P::CriticalSpeed)]; }, seen, sd}};
  const auto bayes = condition_normal<parameter_count>(before.parameters, exact);
  EXPECT_EQ(lesson.weight, 1);
  for (std::size_t i = 0; i < parameter_count; ++i) {
    EXPECT_NEAR(after.parameters.mean[i], bayes.mean[i], 2e-3) << i;
    EXPECT_NEAR(std::sqrt(after.parameters.covariance[i][i]), std::sqrt(bayes.covariance[i][i]), 2e-3) << i;
  }
}

// T11.10 of the project's physiology page: a mile in 450 s under the two-parameter hyperbola, a curved score.
// Here with the prior of a woman and all parameters; the reference is Gauss-Newton on the same likelihood.
TEST(Learning, AgreesWithGaussNewtonOnARun) {
  const BodyEstimate before = woman();
  const auto mile = [](const Body& body) { return std::log(run_seconds(body, 1609.344, constants())); };
  const BodyEstimate after = learn_one(before, seen_by(before, std::log(450), .02, 400, mile)).after;
  const std::array run{Measurement<parameter_count>{
      [&](const auto& point) { return mile(body_at(point, before.pull, constants())); }, std::log(450), .02}};
  const auto bayes = condition_normal<parameter_count>(before.parameters, run);
  const auto speed = index_of(P::CriticalSpeed);
  EXPECT_NEAR(std::exp(after.parameters.mean[speed] - bayes.mean[speed]), 1, .015);
  EXPECT_NEAR(sd_of(after, P::CriticalSpeed), std::sqrt(bayes.covariance[speed][speed]), .01);
}

TEST(Learning, NarrowsTheDoubtAndMovesTowardsTheScore) {
  const BodyEstimate before = woman();
  const double expected = before.parameters.mean[index_of(P::CriticalSpeed)];
  const One faster = learn_one(before, seen_by(before, expected + .1, .08, 200, log_speed));
  EXPECT_GT(median(faster.after, constants()).critical_speed, median(before, constants()).critical_speed);
  EXPECT_LT(sd_of(faster.after, P::CriticalSpeed), .8 * sd_of(before, P::CriticalSpeed));
  EXPECT_NEAR(faster.lesson.expected, expected, .01);
}

TEST(Learning, HardlyBelievesAScoreThatNobodyCouldHaveMade) {
  const BodyEstimate before = woman();
  const double expected = before.parameters.mean[index_of(P::CriticalSpeed)];
  const One wrong = learn_one(before, seen_by(before, expected + std::log(5.0), .08, 200, log_speed));
  EXPECT_LT(wrong.lesson.weight, .1);
  EXPECT_LT(median(wrong.after, constants()).critical_speed,
            1.12 * median(before, constants()).critical_speed);
}

TEST(Learning, TakesAnotherScoreForTheLastWord) {
  BodyEstimate estimate = woman();
  const double expected = estimate.parameters.mean[index_of(P::CriticalSpeed)];
  const auto score = [&](double by) {
    estimate = learn_one(estimate, seen_by(estimate, expected + by, .05, 200, log_speed)).after;
  };
  score(-1.2);
  for (int i = 0; i < 6; ++i) score(.1);
  EXPECT_NEAR(estimate.parameters.mean[index_of(P::CriticalSpeed)], expected + .1, .03);
}

TEST(Learning, LearnsFromACapOnlyWhatItTells) {
  const BodyEstimate before = woman();
  const auto slowness = [](const Body& body) { return -std::log(body.critical_speed); };
  Seen capped = seen_by(before, -2, .08, 200, slowness);
  capped.score.beyond = true;
  EXPECT_EQ(learn_one(before, capped).after, before);
  capped.score.seen = -before.parameters.mean[index_of(P::CriticalSpeed)] + .2;
  EXPECT_LT(median(learn_one(before, capped).after, constants()).critical_speed,
            median(before, constants()).critical_speed);
}

TEST(Learning, TakesTwoScoresOfADayAsOneAfterTheOther) {
  const BodyEstimate before = woman();
  const double expected = before.parameters.mean[index_of(P::CriticalSpeed)];
  const Seen first = seen_by(before, expected + .1, .08, 200, log_speed);
  const Learned both = learn({.body = before}, first.drawn, std::array{first.score, first.score});
  const Lesson once = learn_one(before, first).lesson;
  EXPECT_EQ(both.lessons[0].expected, once.expected);
  EXPECT_GT(both.lessons[1].expected, once.expected + .05);
  EXPECT_LT(both.lessons[1].sd, once.sd);
}

// The level of a piece is the sum of what the body tells and what the model is wrong by, whose variances add
// up before the first score; the mean of n normal observations with known noise has a textbook posterior (A.
// Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., section 2.5, from memory).
TEST(Learning, AveragesTheScoresOfAPieceDoneAgain) {
  const BodyEstimate before = woman();
  const auto speed = index_of(P::CriticalSpeed);
  const double expected = before.parameters.mean[speed];
  const double fault = .08, day = .03;
  const double precision = 1 / (before.parameters.covariance[speed][speed] + fault * fault);
  Knowledge knowledge{.body = before};
  std::optional<std::size_t> level;
  double sum = 0, count = 0;
  for (const double score : {.10, .06, .08, .04, .09}) {
    Seen seen = seen_by(knowledge.body, expected + score, fault, 400, log_speed);
    seen.score.day_sd = day;
    seen.score.level = level;
    const Learned learned = learn(knowledge, seen.drawn, std::span(&seen.score, 1));
    const Lesson& lesson = learned.lessons.front();
    const double told = 1 / (day * day);
    EXPECT_NEAR(lesson.expected, expected + sum * told / (precision + count * told), .003);
    EXPECT_NEAR(lesson.sd, std::sqrt(1 / (precision + count * told) + day * day), .003);
    knowledge = learned.after;
    level = lesson.level;
    sum += score;
    count += 1;
  }
  EXPECT_EQ(knowledge.levels.mean.size(), 1u);
  EXPECT_GT(knowledge.levels.with_body[0][speed], 0);
}

// Body and fault are independent and normal before the scores, which tell of their sum alone: the posterior
// of the fault is that of a normal mean with known variances (Gelman et al. 2013, section 2.5, from memory).
TEST(Learning, KnowsWhatAPersonScoresBeyondTheirBody) {
  const BodyEstimate before = woman();
  const auto speed = index_of(P::CriticalSpeed);
  const double expected = before.parameters.mean[speed];
  const double fault = .08, day = .03, score = .10, count = 4;
  Knowledge knowledge{.body = before};
  std::optional<std::size_t> level;
  for (int i = 0; i < count; ++i) {
    Seen seen = seen_by(knowledge.body, expected + score, fault, 400, log_speed);
    seen.score.day_sd = day;
    seen.score.level = level;
    const Learned learned = learn(knowledge, seen.drawn, std::span(&seen.score, 1));
    knowledge = learned.after;
    level = learned.lessons.front().level;
  }
  const LevelGap gap = gap_of(knowledge.body, knowledge.levels, *level);
  const double variance = fault * fault;
  const double all = before.parameters.covariance[speed][speed] + variance + day * day / count;
  EXPECT_NEAR(gap.middle, score * variance / all, .004);
  const double along = std::inner_product(gap.along.begin(), gap.along.end(), gap.along.begin(), 0.0);
  EXPECT_NEAR(std::sqrt(along + gap.own_sd * gap.own_sd), std::sqrt(variance - variance * variance / all),
              .004);
  // Together with the body it is the level again, which is known far better than either.
  Normals level_along = by_normals(knowledge.body, knowledge.levels.slope[*level]);
  for (std::size_t i = 0; i < parameter_count; ++i) level_along[i] += gap.along[i];
  const double level_variance =
      std::inner_product(level_along.begin(), level_along.end(), level_along.begin(), 0.0);
  EXPECT_NEAR(std::sqrt(level_variance + gap.own_sd * gap.own_sd), day / std::sqrt(count), .003);
}

TEST(Learning, ForecastsWhatTheDrawnBodiesAndTheDoubtAboutTheModelMakeTogether) {
  const BodyEstimate before = woman();
  const double middle = before.parameters.mean[index_of(P::CriticalSpeed)];
  const double sd = std::hypot(sd_of(before, P::CriticalSpeed), .12);
  const Lesson lesson = learn_one(before, seen_by(before, middle - sd, .12, 2000, log_speed)).lesson;
  EXPECT_NEAR(lesson.p50, middle, .01);
  EXPECT_NEAR(lesson.p90, middle + 1.2816 * sd, .015);
  EXPECT_NEAR(lesson.below, .1587, .01);
}

TEST(Learning, BelievesTheSecondOfTwoScoresThatAgreeAgainstAllExpectation) {
  Knowledge knowledge{.body = woman()};
  const double expected = knowledge.body.parameters.mean[index_of(P::CriticalSpeed)];
  std::optional<std::size_t> level;
  const auto score = [&](double by) {
    Seen seen = seen_by(knowledge.body, expected + by, .05, 200, log_speed);
    seen.score.day_sd = .03;
    seen.score.level = level;
    const Learned learned = learn(knowledge, seen.drawn, std::span(&seen.score, 1));
    knowledge = learned.after;
    level = learned.lessons.front().level;
    return learned.lessons.front().weight;
  };
  for (int i = 0; i < 4; ++i) score(0);
  EXPECT_LT(score(.5), .1);
  EXPECT_LT(knowledge.levels.mean[*level], expected + .1);
  EXPECT_GT(score(.5), .8);
  EXPECT_GT(knowledge.levels.mean[*level], expected + .3);
}

BodyEstimate later(const BodyEstimate& known, const BodyEstimate& unknown, double days) {
  return after_days({.body = known}, unknown, days).body;
}

TEST(Drift, ForgetsOnlyAsFarAsThePerson) {
  const BodyEstimate unknown = woman();
  const double expected = unknown.parameters.mean[index_of(P::CriticalSpeed)];
  const BodyEstimate known = learn_one(unknown, seen_by(unknown, expected, .02, 200, log_speed)).after;
  const BodyEstimate week = later(known, unknown, 7), years = later(known, unknown, 40000);
  EXPECT_GT(sd_of(week, P::CriticalSpeed), sd_of(known, P::CriticalSpeed));
  EXPECT_LT(sd_of(week, P::CriticalSpeed), std::hypot(sd_of(known, P::CriticalSpeed), .011));
  EXPECT_NEAR(sd_of(years, P::CriticalSpeed), sd_of(unknown, P::CriticalSpeed), 1e-9);
  EXPECT_EQ(later(known, unknown, 0), known);
}

TEST(Drift, TakesALittleOffAfterTwoIdleMonths) {
  const BodyEstimate known = woman();
  const auto push = index_of(P::Push);
  EXPECT_EQ(later(known, known, 60).parameters.mean[push], known.parameters.mean[push]);
  EXPECT_NEAR(later(known, known, 74).parameters.mean[push], known.parameters.mean[push] - .02, 1e-9);
  EXPECT_NEAR(later(known, known, 400).parameters.mean[push], known.parameters.mean[push] - .05, 1e-9);
}

TEST(Drift, TakesTheLevelsOfPiecesAlong) {
  const BodyEstimate unknown = woman();
  const auto speed = index_of(P::CriticalSpeed);
  const Seen seen = seen_by(unknown, unknown.parameters.mean[speed], .02, 400, log_speed);
  const Knowledge known = learn({.body = unknown}, seen.drawn, std::span(&seen.score, 1)).after;
  const Knowledge idle = after_days(known, unknown, 74);
  EXPECT_NEAR(known.levels.slope[0][speed], 1, .02);
  EXPECT_NEAR(idle.levels.mean[0] - known.levels.mean[0],
              idle.body.parameters.mean[speed] - known.body.parameters.mean[speed], 1e-3);
  EXPECT_GT(idle.levels.covariance[0][0], known.levels.covariance[0][0]);
}

}  // namespace
}  // namespace repwright::body
