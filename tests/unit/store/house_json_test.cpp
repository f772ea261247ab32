#include "store/house_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped_catalogue.hpp"

namespace repwright::store {
namespace {

using ::repwright::test::shipped_catalogue;
using testing::HasSubstr;

TEST(HouseFile, HasTheDefaultsForWhatItDoesNotSay) {
  const auto file = read_house("{}", "house.json", shipped_catalogue());
  ASSERT_TRUE(file.has_value());
  EXPECT_EQ(file->house, domain::House());
}

TEST(HouseFile, ReadsEveryRule) {
  const auto file = read_house(R"({"mass_unit": "lb", "tiers": "by-choice", "tempo": "up-top-down-pause",
    "legs_counted_together": false, "pull_up_may_swing": true, "burpee_has_push_up": false,
    "minute_one_is_odd": false, "last_rest_counts": false, "keep_place_while_resting": false,
    "words": {"willow": "Runs", "lockers": "burpee broad jumps"}})",
                               "house.json", shipped_catalogue());
  ASSERT_TRUE(file.has_value()) << file.error().message;
  domain::House expected;
  expected.mass_unit = domain::MassUnit::Pounds;
  expected.tiers = domain::TierRule::ByChoice;
  expected.tempo = domain::TempoOrder::UpTopDownPause;
  expected.legs_counted_together = false;
  expected.pull_up_may_swing = true;
  expected.burpee_has_push_up = false;
  expected.minute_one_is_odd = false;
  expected.last_rest_counts = false;
  expected.keep_place_while_resting = false;
  expected.words = {{"willow", "run"}, {"lockers", "burpee-broad-jump"}};
  EXPECT_EQ(file->house, expected);
}

TEST(HouseFile, NamesWhatIsWrong) {
  const auto file = read_house(R"({"mass_unit": "stone", "words": {"a": "sofa"}, "last_rest_counts": 1})",
                               "house.json", shipped_catalogue());
  ASSERT_FALSE(file.has_value());
  EXPECT_THAT(file.error().message,
              testing::AllOf(HasSubstr("/mass_unit: is 'stone', expected one of kg, lb"),
                             HasSubstr("/words/a: the catalogue knows no movement 'sofa'"),
                             HasSubstr("/last_rest_counts: is a number, expected true or false")));
}

}  // namespace
}  // namespace repwright::store
