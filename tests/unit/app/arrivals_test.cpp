#include "app/arrivals.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/results.hpp"
#include "app/score_form.hpp"
#include "board/read.hpp"
#include "support/demo_gym.hpp"

namespace repwright::app {
namespace {

using std::chrono::year;

domain::Board board_of(std::string_view text) {
  const auto& knows = test::demo_gym()->knowledge;
  return board::read(text, knows.catalogue, knows.house).board;
}

std::string action(Standing standing, std::string_view text) {
  domain::GymClass gym_class;
  gym_class.date = year{2027} / 5 / 15;
  Comer comer{.person = {}, .late = {}, .standing = standing, .last_came = year{2027} / 4 / 21};
  return standing_action(comer, gym_class, board_of(text), test::demo_gym()->knowledge.catalogue);
}

TEST(StandingAction, TellsNewPeopleAndReturnersWhatToHalve) {
  EXPECT_EQ(action(Standing::First, "5 RFT\n9 pull-ups\n"), "first day: half the counts, effort 5 to 6");
  EXPECT_EQ(action(Standing::Back, "5 RFT\n9 pull-ups\n12 push-ups\n"), "back after 24 days: half the pulls");
  EXPECT_EQ(action(Standing::Back, "5 RFT\n12 push-ups\n"), "back after 24 days: half the pushes");
  EXPECT_EQ(action(Standing::Back, "5 RFT\n400 m run\n"), "back after 24 days: half the counts");
  EXPECT_EQ(action(Standing::Regular, "5 RFT\n9 pull-ups\n"), "");
}

TEST(Believed, ReachesAsFarBeyondTheRangeAsItIsWide) {
  domain::Spread forecast;
  forecast.p10 = 90;
  forecast.p50 = 100;
  forecast.p90 = 140;
  EXPECT_EQ(believed(forecast), std::pair(40.0, 190.0));
  forecast.p10 = 99;
  forecast.p90 = 101;
  EXPECT_EQ(believed(forecast), std::pair(74.0, 126.0)) << "at least a quarter of the middle";
}

// 1.96 × √2 = 2.77: Weir 2005, J Strength Cond Res 19:231-240, doi 10.1519/15184.1, from memory.
TEST(Noise, IsTheMinimalDetectableChangeOfTwoDays) {
  EXPECT_NEAR(noise_of(10), 27.7, 0.05);
  EXPECT_EQ(noise_of(0), 0);
}

}  // namespace
}  // namespace repwright::app
