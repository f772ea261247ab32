#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "body/effort.hpp"
#include "body/estimate.hpp"
#include "body/knowledge.hpp"
#include "unit/body/support.hpp"

/// What a body is good at beside what its marks tell.
namespace repwright::body {
namespace {

Effort effort_with(const char* movement, std::uint64_t knack) {
  Body body;
  body.knack = knack;
  return effort_of(spec_of(movement), body, shipped_constants());
}

double deviation(const std::vector<double>& values) {
  double sum = 0, squares = 0;
  for (const double value : values) sum += value, squares += value * value;
  const auto count = static_cast<double>(values.size());
  return std::sqrt(squares / count - sum * sum / count / count);
}

TEST(Knack, LeavesTheTestsOfTheGroupsToTheirMarks) {
  for (const char* test : {"push-up", "pull-up", "air-squat", "sit-up"}) {
    EXPECT_EQ(effort_with(test, 7).best, effort_with(test, 0).best) << test;
    EXPECT_EQ(effort_with(test, 7).theta, effort_with(test, 0).theta) << test;
  }
}

TEST(Knack, IsAnotherForEachMovementAndTheSameEachTime) {
  const double swing = effort_with("kb-swing", 7).best / effort_with("kb-swing", 0).best;
  const double burpee = effort_with("burpee", 7).best / effort_with("burpee", 0).best;
  EXPECT_GT(std::abs(swing - 1), 1e-6);
  EXPECT_GT(std::abs(swing - burpee), 1e-6);
  EXPECT_EQ(effort_with("burpee", 7).best, effort_with("burpee", 7).best);
}

TEST(Knack, SpreadsSetsOfAllAndThePaceOfSkillsAsTheConstantsSay) {
  const domain::PriorConstants& prior = shipped_constants().prior;
  std::vector<double> sets, paces, plain;
  const Effort swung = effort_with("kb-swing", 0), jumped = effort_with("burpee", 0);
  for (std::uint64_t knack = 1; knack <= 4000; ++knack) {
    sets.push_back(std::log(effort_with("burpee", knack).best / jumped.best));
    paces.push_back(std::log(effort_with("kb-swing", knack).cost / swung.cost));
    plain.push_back(effort_with("burpee", knack).cost / jumped.cost);
  }
  EXPECT_NEAR(deviation(sets), prior.knack_sd, .05 * prior.knack_sd);
  EXPECT_NEAR(deviation(paces), prior.pace_knack_sd, .05 * prior.pace_knack_sd);
  EXPECT_EQ(deviation(plain), 0);
}

TEST(Knack, BelongsToADrawnBodyAndNotToTheMiddle) {
  const Constants& constants = shipped_constants();
  const BodyEstimate known = prior({.sex = domain::Sex::Female}, constants);
  EXPECT_EQ(median(known, constants).knack, 0U);
  const std::uint64_t first = draw(known, {1}, 0, 5, constants).knack;
  EXPECT_NE(first, 0U);
  EXPECT_NE(first, draw(known, {1}, 1, 5, constants).knack);
  BodyEstimate hers = known;
  hers.knack = 9;
  EXPECT_EQ(draw(hers, {1}, 1, 5, constants).knack, 9U);
}

}  // namespace
}  // namespace repwright::body
