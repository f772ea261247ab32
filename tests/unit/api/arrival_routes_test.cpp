#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/front_desk.hpp"

namespace repwright {
namespace {

using api::Method;
using api::Response;
using app::Role;
using nlohmann::json;
using test::FrontDesk;

constexpr const char* list = "/api/classes/sat-24/arrivals";

Response ask(FrontDesk& front, Role role, Method method, const std::string& path, const json& body = {}) {
  return front.ask(method, path, body.is_null() ? "" : body.dump(), front.cookie_of(role));
}
/// The row of that person on the list.
json row_of(FrontDesk& front, const std::string& person) {
  const json answer = json::parse(ask(front, Role::Coach, Method::Get, list).body);
  for (const json& row : answer.at("people"))
    if (row["id"] == person) return row;
  return nullptr;
}
json tick(const std::string& key, const std::string& state, double late_s = 0) {
  return {{"key", key}, {"person", "a07"}, {"state", state}, {"late_s", late_s}};
}
std::size_t heads(FrontDesk& front) {
  return front.desk.gym()->classes.at("sat-24").arrivals.size();
}

TEST(Arrivals, AreExpectedUntilTheyAreTickedAndAgainWhenThatIsTakenBack) {
  FrontDesk front;
  EXPECT_EQ(row_of(front, "a07")["state"], "expected");
  const Response ticked = ask(front, Role::Relief, Method::Post, list, tick("k1", "here", 300));
  ASSERT_EQ(ticked.status, 200) << ticked.body;
  EXPECT_EQ(row_of(front, "a07")["state"], "here");
  EXPECT_EQ(row_of(front, "a07")["late_s"], 300);
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, list, tick("k2", "expected")).status, 200);
  EXPECT_EQ(row_of(front, "a07")["state"], "expected");
}

TEST(Arrivals, ThatAreAwayLeaveTheRehearsalAndComeBackIntoIt) {
  FrontDesk front;
  const std::size_t all = heads(front);
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, list, tick("k1", "away")).status, 200);
  EXPECT_EQ(row_of(front, "a07")["state"], "away");
  EXPECT_EQ(heads(front), all - 1);
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, list, tick("k2", "here")).status, 200);
  EXPECT_EQ(row_of(front, "a07")["state"], "here");
  EXPECT_EQ(heads(front), all);
}

TEST(Arrivals, OfAKeyThatComesAgainLaterChangeNothing) {
  FrontDesk front;
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, list, tick("k1", "here")).status, 200);
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, list, tick("k2", "away")).status, 200);
  EXPECT_EQ(ask(front, Role::Coach, Method::Post, list, tick("k1", "here")).status, 200);
  EXPECT_EQ(row_of(front, "a07")["state"], "away");
}

TEST(Arrivals, AreOnlyWhoIsHereOnceNobodyElseComes) {
  FrontDesk front;
  const std::string over = std::string(list) + "/nobody-else";
  EXPECT_EQ(ask(front, Role::Coach, Method::Post, over, {{"key", "k0"}}).status, 400);
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, list, tick("k1", "here")).status, 200);
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, over, {{"key", "k2"}}).status, 200);
  EXPECT_EQ(heads(front), 1u);
  EXPECT_EQ(row_of(front, "a08")["state"], "away");
}

TEST(Arrivals, NameTheFieldThatIsWrong) {
  FrontDesk front;
  const auto field = [&](const json& body) {
    return json::parse(ask(front, Role::Coach, Method::Post, list, body).body).at("error")["field"];
  };
  EXPECT_EQ(field({{"state", "here"}}), "person");
  EXPECT_EQ(field({{"person", "nobody"}, {"state", "here"}}), "person");
  EXPECT_EQ(field({{"person", "a07"}, {"state", "asleep"}}), "state");
  EXPECT_EQ(field({{"person", "a07"}, {"state", "here"}, {"late_s", -1}}), "late_s");
  EXPECT_EQ(
      ask(front, Role::Relief, Method::Post, "/api/classes/wed-morning-9/arrivals", tick("k", "here")).status,
      403);
}

TEST(WalkIns, AreAddedOnceHoweverOftenTheirNameIsSent) {
  FrontDesk front;
  const std::size_t people = front.desk.gym()->people.size();
  const json sent{{"key", "ab12"}, {"name", "Ro Invented"}};
  const std::string path = "/api/classes/sat-24/walk-ins";
  const Response first = ask(front, Role::Relief, Method::Post, path, sent);
  ASSERT_EQ(first.status, 200) << first.body;
  EXPECT_EQ(ask(front, Role::Relief, Method::Post, path, sent).body, first.body);
  EXPECT_EQ(front.desk.gym()->people.size(), people + 1);
  const json row = row_of(front, json::parse(first.body)["person"]);
  EXPECT_EQ(row["state"], "here");
  EXPECT_EQ(row["walk_in"], true);
  EXPECT_EQ(row["name"], "Ro Invented");
  EXPECT_EQ(front.store.gym(test::demo_gym()->knowledge.catalogue)->gym.people.size(), people + 1);
}

TEST(ListEffect, SaysWhatFewerPeopleDoToTheHour) {
  FrontDesk front;
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, list, tick("k1", "here")).status, 200);
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, std::string(list) + "/nobody-else", {{"key", "k2"}}).status,
            200);
  const json effect = json::parse(ask(front, Role::Coach, Method::Get, std::string(list) + "/effect").body);
  EXPECT_EQ(effect["now"]["heads"], 1);
  EXPECT_EQ(effect["now"]["queue_at"], "") << "nobody waits for oneself";
  EXPECT_THAT(effect["words"].get<std::string>(), testing::StartsWith("1 instead of 24: "));
}

TEST(Runners, AreOutSinceTheyWereSeenAndInAgain) {
  FrontDesk front;
  const std::string path = "/api/classes/sat-24/runners";
  const auto runner = [&] {
    const json answer = json::parse(ask(front, Role::Coach, Method::Get, path).body);
    for (const json& row : answer.at("runners"))
      if (row["id"] == "a07") return row;
    return json();
  };
  EXPECT_EQ(runner()["out_since_s"], nullptr);
  const json lengths = json::parse(ask(front, Role::Relief, Method::Get, "/api/classes/sat-24/runs").body);
  ASSERT_FALSE(lengths["runs"].empty());
  for (const json& run : lengths["runs"]) EXPECT_LT(run["p10_s"], run["p90_s"]) << run;
  const json out{{"key", "k1"}, {"person", "a07"}, {"act", "out"}, {"ago_s", 20}};
  ASSERT_EQ(ask(front, Role::Relief, Method::Post, path, out).status, 200);
  EXPECT_EQ(runner()["out_since_s"], 20);
  front.now += std::chrono::seconds(70);
  ASSERT_EQ(ask(front, Role::Relief, Method::Post, path, out).status, 200);
  EXPECT_EQ(runner()["out_since_s"], 90) << "sent again it is the same line";
  ASSERT_EQ(
      ask(front, Role::Coach, Method::Post, path, {{"key", "k2"}, {"person", "a07"}, {"act", "in"}}).status,
      200);
  EXPECT_EQ(runner()["out_since_s"], nullptr);
  EXPECT_EQ(ask(front, Role::Coach, Method::Post, path, {{"person", "a07"}, {"act", "in"}}).status, 400);
}

TEST(EmergencyCard, IsWrittenByCoachesAndReadByAll) {
  FrontDesk front;
  const auto card = [&](Role role) {
    return json::parse(ask(front, role, Method::Get, "/api/emergency").body);
  };
  EXPECT_EQ(card(Role::Person)["text"], "");
  const json set{{"version", card(Role::Owner)["version"]}, {"text", "Defibrillator: by the door"}};
  ASSERT_EQ(ask(front, Role::Owner, Method::Put, "/api/emergency", set).status, 200);
  EXPECT_EQ(card(Role::Relief)["text"], "Defibrillator: by the door");
  EXPECT_EQ(ask(front, Role::Coach, Method::Put, "/api/emergency", set).status, 409);
}

}  // namespace
}  // namespace repwright
