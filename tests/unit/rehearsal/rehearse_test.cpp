#include "rehearsal/rehearse.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "rehearsal/summary.hpp"
#include "support/plans.hpp"

namespace repwright {
namespace {

test::Stage small_class() {
  return test::mixed_class({.people = 6, .seconds = 300, .bars = 2});
}

TEST(Rehearse, GivesTheSameForTheSameSeedAndAnotherForAnother) {
  const test::Stage stage = small_class();
  EXPECT_EQ(*rehearsal::rehearse(stage.request(20)), *rehearsal::rehearse(stage.request(20)));
  EXPECT_NE(rehearsal::rehearse(stage.request(20, 1))->people,
            rehearsal::rehearse(stage.request(20, 2))->people);
}

TEST(Rehearse, SaysThatNobodyIsThere) {
  test::Stage stage = small_class();
  stage.cast = {};
  stage.plan = {};
  const auto empty = rehearsal::rehearse(stage.request(20));
  ASSERT_FALSE(empty);
  EXPECT_EQ(empty.error().code, base::ErrorCode::Invalid);
}

TEST(Rehearse, StopsWhenAsked) {
  const test::Stage stage = small_class();
  std::stop_source source;
  source.request_stop();
  rehearsal::RehearsalRequest request = stage.request(20);
  request.stop = source.get_token();
  const auto stopped = rehearsal::rehearse(request);
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().code, base::ErrorCode::Stopped);
}

TEST(Rehearse, KeepsDrawsOnlyOnDemand) {
  const test::Stage stage = small_class();
  EXPECT_TRUE(rehearsal::rehearse(stage.request(5))->draws.empty());
  rehearsal::RehearsalRequest request = stage.request(5);
  request.keep = rehearsal::Keep::Draws;
  const auto drawn = rehearsal::rehearse(request);
  ASSERT_EQ(drawn->draws.size(), 6U * 5U);
  EXPECT_GT(drawn->draws[0].score, 0);
  EXPECT_GT(drawn->draws[0].vo2max, 0);
  EXPECT_TRUE(std::ranges::is_sorted(drawn->draws[0].step_ends_s));
}

TEST(Rehearse, SpreadsOneBodyOverDaysLessThanTheCastOverBodies) {
  const auto played = rehearsal::rehearse(small_class().request(64));
  for (const auto& person : played->people) {
    EXPECT_GT(person.pieces[0].sd_day, 0);
    EXPECT_LT(person.pieces[0].sd_day, 1.3 * person.pieces[0].score.sd);
  }
}

TEST(Rehearse, BooksTheQueueWhereItStands) {
  const auto played = rehearsal::rehearse(small_class().request(30));
  const domain::PlaceUse& bars = played->places.at(0);
  EXPECT_GT(bars.wait_mean_s, 0);
  EXPECT_GE(bars.wait_p90_s, bars.wait_mean_s);
  EXPECT_LE(bars.queue_max_mean, 4);
  ASSERT_FALSE(bars.queue.empty());
  double integral = 0;
  for (std::size_t i = 0; i + 1 < bars.queue.size(); ++i)
    integral += bars.queue[i].second * (bars.queue[i + 1].first - bars.queue[i].first);
  EXPECT_NEAR(integral, 6 * bars.wait_mean_s, 1e-6) << "the queue over time is the waits of all six";
}

TEST(Limiter, IsWhereMostTimeGoesBeyondBriskWork) {
  using domain::Limiter;
  rehearsal::Losses losses{};
  losses[static_cast<std::size_t>(Limiter::Pace)] = 900;
  EXPECT_EQ(rehearsal::limiter_of(losses), Limiter::Pace);
  losses[static_cast<std::size_t>(Limiter::Pull)] = 100;
  EXPECT_EQ(rehearsal::limiter_of(losses), Limiter::Pace) << "a tenth holds nobody back";
  losses[static_cast<std::size_t>(Limiter::Pull)] = 300;
  losses[static_cast<std::size_t>(Limiter::Queue)] = 200;
  EXPECT_EQ(rehearsal::limiter_of(losses), Limiter::Pull);
}

}  // namespace
}  // namespace repwright
