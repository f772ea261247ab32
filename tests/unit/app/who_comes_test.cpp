#include "app/who_comes.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright::app {
namespace {

domain::Person person(const std::string& id) {
  domain::Person person;
  person.id = {id};
  person.name = "Invented " + id;
  return person;
}

std::vector<std::string> ids(const Attendance& attendance) {
  std::vector<std::string> ids;
  for (const domain::Person& person : attendance.people) ids.push_back(person.id.text);
  return ids;
}

const std::vector<domain::Person> three{person("a01"), person("a02"), person("a03")};

TEST(WhoComes, IsEverybodyWhenTheClassHasNoList) {
  const auto attendance = who_comes(three, {}, std::nullopt);
  ASSERT_TRUE(attendance);
  EXPECT_THAT(ids(*attendance), testing::ElementsAre("a01", "a02", "a03"));
}

TEST(WhoComes, IsWhoArrivedRatherThanWhoBooked) {
  domain::GymClass gym_class;
  gym_class.booked = {{"a01"}, {"a02"}};
  gym_class.arrivals = {{{"a03"}, 90 * base::second}, {{"a01"}, {}}};
  const auto attendance = who_comes(three, gym_class, std::nullopt);
  ASSERT_TRUE(attendance);
  EXPECT_THAT(ids(*attendance), testing::ElementsAre("a03", "a01"));
  EXPECT_DOUBLE_EQ(attendance->late[0].si(), 90);
}

TEST(WhoComes, IsFilledUpWithUnknownPeople) {
  const auto attendance = who_comes(three, {}, 5);
  ASSERT_TRUE(attendance);
  EXPECT_THAT(ids(*attendance), testing::ElementsAre("a01", "a02", "a03", "unknown-1", "unknown-2"));
  EXPECT_TRUE(attendance->people.back().unknown);
}

TEST(WhoComes, IsCutToTheHeadsThatCome) {
  const auto attendance = who_comes(three, {}, 2);
  ASSERT_TRUE(attendance);
  EXPECT_THAT(ids(*attendance), testing::ElementsAre("a01", "a02"));
}

TEST(WhoComes, NamesEveryPersonThatNobodyKnows) {
  domain::GymClass gym_class;
  gym_class.booked = {{"a01"}, {"zz"}, {"yy"}};
  const auto attendance = who_comes(three, gym_class, std::nullopt);
  ASSERT_FALSE(attendance);
  EXPECT_EQ(attendance.error().code, base::ErrorCode::NotFound);
  EXPECT_THAT(attendance.error().message, testing::HasSubstr("`zz`, `yy`"));
}

TEST(WhoComes, FailsWhenNobodyComes) {
  const auto attendance = who_comes({}, {}, std::nullopt);
  ASSERT_FALSE(attendance);
  EXPECT_EQ(attendance.error().code, base::ErrorCode::Invalid);
}

}  // namespace
}  // namespace repwright::app
