#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/front_desk.hpp"

/// What is asked for may be impossible: a clear sentence and the nearest plan, never nothing.
namespace repwright {
namespace {

using api::Method;
using domain::Role;
using nlohmann::json;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

struct Told {
  int status = 0;
  json body;
};
Told ask(test::FrontDesk& front, const std::string& path, const json& body, Role role = Role::Coach) {
  const api::Response answer = front.ask(Method::Post, path, body.dump(), front.cookie_of(role));
  return {answer.status, json::parse(answer.body)};
}
Told ask(const std::string& path, const json& body, Role role = Role::Coach) {
  test::FrontDesk front;
  return ask(front, path, body, role);
}
std::string words(const json& list) {
  std::string all;
  for (const json& each : list) all += each.get<std::string>() + "\n";
  return all;
}

TEST(AdviceRoutes, SayThatNoDrillFitsAndGiveTheOneForElsewhere) {
  const Told told = ask("/api/warmup", {{"board", "sat-two-clocks"}, {"class", "sat-24"}, {"minutes", 0.25}});
  ASSERT_EQ(told.status, 200) << told.body;
  EXPECT_THAT(told.body["together"]["drills"], IsEmpty());
  EXPECT_THAT(words(told.body["notes"]), HasSubstr("no drill fits into 0:15"));
  EXPECT_THAT(told.body["late"]["drills"], Not(IsEmpty()));
}

TEST(AdviceRoutes, GiveOnePersonAloneTheirShareOfAPieceForPairs) {
  const Told told = ask("/api/pairs", {{"board", "tue-pairs"}, {"heads", 1}});
  ASSERT_EQ(told.status, 200) << told.body;
  ASSERT_EQ(told.body["teams"].size(), 1u);
  EXPECT_EQ(told.body["teams"][0]["people"].size(), 1u);
  EXPECT_THAT(told.body["notes"], Not(IsEmpty()));
}

TEST(AdviceRoutes, FitAHallWithoutKit) {
  test::FrontDesk front;
  const api::Response kept = front.ask(Method::Get, "/api/hall", "", front.cookie_of(Role::Owner));
  json hall = json::parse(kept.body);
  hall["hall"]["kit"] = json::array();
  hall["hall"]["places"] = json::array();
  const api::Response put =
      front.ask(Method::Put, "/api/hall", json{{"hall", hall["hall"]}, {"version", hall["version"]}}.dump(),
                front.cookie_of(Role::Owner));
  ASSERT_EQ(put.status, 200) << put.body;
  const json question{{"board", "sat-two-clocks"}, {"class", "sat-24"}, {"runs", 8}};
  const Told fit = ask(front, "/api/fit", question);
  ASSERT_EQ(fit.status, 200) << fit.body;
  EXPECT_EQ(fit.body["pieces"][1]["people"].size(), 24u);
  const Told warm_up = ask(front, "/api/warmup", question);
  ASSERT_EQ(warm_up.status, 200) << warm_up.body;
  EXPECT_THAT(warm_up.body["together"]["drills"], Not(IsEmpty()));
  const Told repairs = ask(front, "/api/repairs", question);
  EXPECT_EQ(repairs.status, 200) << repairs.body;
}

TEST(AdviceRoutes, TakeAnIntentWrittenBackwardsTheOtherWayRound) {
  const Told told = ask("/api/fit", {{"text", "for time\n60 push-ups\n800 m run\nintent 14-10 min\n"},
                                     {"class", "wed-morning-9"},
                                     {"runs", 8}});
  ASSERT_EQ(told.status, 200) << told.body;
  EXPECT_EQ(told.body["pieces"][0]["intent"], "10:00 to 14:00");
}

TEST(AdviceRoutes, FitSixtyPeopleIntoAHallForTwelve) {
  const Told told =
      ask("/api/fit", {{"board", "sat-two-clocks"}, {"class", "sat-24"}, {"heads", 60}, {"runs", 4}});
  ASSERT_EQ(told.status, 200) << told.body;
  EXPECT_EQ(told.body["pieces"][1]["people"].size(), 60u);
  const Told pairs = ask("/api/pairs", {{"board", "tue-pairs"}, {"heads", 60}});
  ASSERT_EQ(pairs.status, 200) << pairs.body;
  EXPECT_EQ(pairs.body["teams"].size(), 30u);
}

TEST(AdviceRoutes, SayWhatNobodyKnows) {
  EXPECT_THAT(
      ask("/api/warmup", {{"board", "sat-two-clocks"}, {"kit", {"trampoline"}}}).body["error"]["text"],
      HasSubstr("trampoline"));
  EXPECT_EQ(ask("/api/pairs", {{"board", "tue-pairs"}, {"apart", {"a01"}}}).status, 400);
  EXPECT_EQ(ask("/api/away", {{"board", "sat-two-clocks"}, {"who", "nobody"}}).status, 404);
  EXPECT_EQ(ask("/api/fit", {{"text", "hello\n"}}).status, 400);
}

TEST(AdviceRoutes, LetNobodyReadAnothersClassElsewhere) {
  EXPECT_EQ(ask("/api/people/a01/away", {{"quiet", true}}, Role::Person).status, 403);
  const Told own = ask("/api/people/a07/away", {{"quiet", true}, {"minutes", 30}}, Role::Person);
  ASSERT_EQ(own.status, 200) << own.body;
  EXPECT_LE(own.body["away_s"].get<double>(), 30 * 60);
}

TEST(AdviceRoutes, MakeTheBriefingAsLongAsItsWords) {
  const json question{{"board", "sat-two-clocks"}, {"heads", 4}, {"runs", 4}, {"words_per_minute", 60}};
  const Told told = ask("/api/timetable", question);
  ASSERT_EQ(told.status, 200) << told.body;
  EXPECT_EQ(told.body["boxes"][0]["kind"], "briefing");
  EXPECT_THAT(told.body["cuts"], Not(IsEmpty()));
  EXPECT_EQ(ask("/api/timetable", {{"board", "sat-two-clocks"}, {"words_per_minute", 10}}).status, 400);
}

}  // namespace
}  // namespace repwright
