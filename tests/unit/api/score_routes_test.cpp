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
using testing::ElementsAre;

constexpr const char* sheet = "/api/classes/sat-24/scores";

Response ask(FrontDesk& front, Role role, Method method, const std::string& path, const json& body = {}) {
  return front.ask(method, path, body.is_null() ? "" : body.dump(), front.cookie_of(role));
}
json get(FrontDesk& front, const std::string& path, Role role = Role::Coach) {
  return json::parse(ask(front, role, Method::Get, path).body);
}
json error_of(const Response& response) {
  return json::parse(response.body).at("error");
}

TEST(Scores, AreAddedToAClassWithWhoEnteredThem) {
  FrontDesk front;
  const Response added =
      ask(front, Role::Relief, Method::Post, sheet,
          {{"person", "a07"}, {"score", "22:10"}, {"done_as", "ring-row"}, {"effort", 7.5}, {"flag", "hot"}});
  ASSERT_EQ(added.status, 200) << added.body;
  EXPECT_EQ(json::parse(added.body), json::parse(R"({"number": 1, "version": 1})"));
  EXPECT_THAT(added.changed, ElementsAre(api::Topic::Scores));
  EXPECT_EQ(get(front, sheet), json::parse(R"([{"number": 1, "version": 1, "person": "a07", "piece": "",
      "score": "22:10", "done_as": "ring-row", "effort": 7.5, "flag": "hot", "entered_by": "relief",
      "saved_by": "relief", "saved_at": "2027-05-14T00:00:00Z"}])"));
  const domain::ScoreEntry& kept = front.desk.gym()->knowledge.scores.back();
  EXPECT_EQ(kept.board_id, "sat-two-clocks");
  EXPECT_EQ(kept.date, front.desk.gym()->classes.at("sat-24").date);
  EXPECT_EQ(front.store.scores()->back().entry, kept);
}

TEST(Scores, OfAKeyAreAddedOnceHoweverOftenAPhoneSendsThem) {
  FrontDesk front;
  const json sent{{"key", "k-1"}, {"person", "a07"}, {"score", "22:10"}};
  const Response first = ask(front, Role::Coach, Method::Post, sheet, sent);
  const Response again = ask(front, Role::Coach, Method::Post, sheet, sent);
  EXPECT_EQ(again.body, first.body);
  EXPECT_EQ(get(front, sheet).size(), 1u);
  EXPECT_EQ(front.desk.gym()->knowledge.scores.size(), front.store.scores()->size());
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, sheet, {{"person", "a07"}, {"score", "22:10"}}).status,
            200);
  EXPECT_EQ(get(front, sheet).size(), 2u) << "without a key each is one of its own";
}

TEST(Scores, AreCorrectedOnceByWhoLookedAtTheLastOfThem) {
  FrontDesk front;
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, sheet, {{"person", "a07"}, {"score", "22:10"}}).status,
            200);
  const json correction{{"version", 1}, {"person", "a07"}, {"score", "21:10"}};
  front.now += std::chrono::minutes(5);
  const Response corrected = ask(front, Role::Owner, Method::Put, "/api/scores/1", correction);
  EXPECT_EQ(json::parse(corrected.body), json::parse(R"({"number": 1, "version": 2})"));
  EXPECT_EQ(ask(front, Role::Coach, Method::Put, "/api/scores/1", correction).status, 409);
  EXPECT_EQ(front.desk.gym()->knowledge.scores.back().text, "21:10");
  const json versions = get(front, "/api/scores/1/versions");
  ASSERT_EQ(versions.size(), 2u);
  EXPECT_EQ(versions[0]["score"], "22:10");
  EXPECT_EQ(versions[0]["saved_by"], "coach");
  EXPECT_EQ(versions[1]["score"], "21:10");
  EXPECT_EQ(versions[1]["saved_by"], "owner");
  EXPECT_EQ(versions[1]["entered_by"], "coach");
  EXPECT_EQ(versions[1]["saved_at"], "2027-05-14T00:05:00Z");
  EXPECT_THAT(front.changes(), ElementsAre("coach: score 1", "owner: score 1"));
}

TEST(Scores, NameTheFieldThatIsWrong) {
  FrontDesk front;
  const auto field = [&](const json& body) {
    return error_of(ask(front, Role::Coach, Method::Post, sheet, body))["field"];
  };
  EXPECT_EQ(field({{"score", "22:10"}}), "person");
  EXPECT_EQ(field({{"person", "nobody"}, {"score", "22:10"}}), "person");
  EXPECT_EQ(field({{"person", "a07"}}), "score");
  EXPECT_EQ(field({{"person", "a07"}, {"score", std::string(61, '1')}}), "score");
  EXPECT_EQ(field({{"person", "a07"}, {"score", "22:10"}, {"effort", 11}}), "effort");
  EXPECT_EQ(field({{"person", "a07"}, {"score", "22:10"}, {"effort", "hard"}}), "effort");
  EXPECT_EQ(field({{"person", "a07"}, {"score", "22:10"}, {"flag", "tired"}}), "flag");
  EXPECT_EQ(field({{"person", "a07"}, {"score", "22:10"}, {"colour", "red"}}), "colour");
  EXPECT_EQ(ask(front, Role::Coach, Method::Post, "/api/classes/never/scores", {{"person", "a07"}}).status,
            404);
  EXPECT_EQ(ask(front, Role::Coach, Method::Put, "/api/scores/77", {{"version", 1}}).status, 404);
  EXPECT_EQ(ask(front, Role::Coach, Method::Put, "/api/scores/x", {{"version", 1}}).status, 404);
  EXPECT_TRUE(front.changes().empty());
}

TEST(Scores, OfAPersonAreTheirOwnToWriteAndToRead) {
  FrontDesk front;
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, sheet, {{"person", "a08"}, {"score", "20:00"}}).status,
            200);
  ASSERT_EQ(ask(front, Role::Person, Method::Post, sheet, {{"score", "22:10"}}).status, 200);
  EXPECT_EQ(ask(front, Role::Person, Method::Post, sheet, {{"person", "a08"}, {"score", "9:00"}}).status,
            403);
  const json own = get(front, sheet, Role::Person);
  ASSERT_EQ(own.size(), 1u);
  EXPECT_EQ(own[0]["person"], "a07");
  EXPECT_EQ(
      ask(front, Role::Person, Method::Put, "/api/scores/2", {{"version", 1}, {"score", "22:01"}}).status,
      200);
  EXPECT_EQ(
      ask(front, Role::Person, Method::Put, "/api/scores/1", {{"version", 1}, {"score", "9:00"}}).status,
      403);
  EXPECT_EQ(ask(front, Role::Person, Method::Get, "/api/scores/1/versions").status, 403);
  EXPECT_EQ(get(front, "/api/scores/2/versions", Role::Person).size(), 2u);
}

TEST(Scores, ThatWereSomebodyElsesByMistakeAreNotThePersonsToRead) {
  FrontDesk front;
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, sheet, {{"person", "a08"}, {"score", "20:00"}}).status,
            200);
  ASSERT_EQ(ask(front, Role::Coach, Method::Put, "/api/scores/1",
                {{"version", 1}, {"person", "a07"}, {"score", "22:10"}})
                .status,
            200);
  const json versions = get(front, "/api/scores/1/versions", Role::Person);
  ASSERT_EQ(versions.size(), 1u);
  EXPECT_EQ(versions[0]["score"], "22:10");
}

TEST(Scores, OfAnotherClassAreNotForAReliefCoach) {
  FrontDesk front;
  const std::string other = "/api/classes/wed-morning-9/scores";
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, other, {{"person", "a07"}, {"score", "22:10"}}).status,
            200);
  EXPECT_EQ(ask(front, Role::Relief, Method::Get, other).status, 403);
  EXPECT_EQ(ask(front, Role::Relief, Method::Post, other, {{"person", "a07"}, {"score", "1"}}).status, 403);
  EXPECT_EQ(ask(front, Role::Relief, Method::Get, "/api/scores/1/versions").status, 403);
}

TEST(Efforts, SayHowHardTheHourWas) {
  FrontDesk front;
  const std::string path = "/api/classes/sat-24/effort";
  ASSERT_EQ(ask(front, Role::Person, Method::Put, path, {{"effort", 8}}).status, 200);
  ASSERT_EQ(ask(front, Role::Coach, Method::Put, path, {{"person", "a08"}, {"effort", 6.5}}).status, 200);
  ASSERT_EQ(ask(front, Role::Person, Method::Put, path, {{"effort", 9}}).status, 200);
  EXPECT_EQ(get(front, path),
            json::parse(R"([{"person": "a07", "effort": 9}, {"person": "a08", "effort": 6.5}])"));
  EXPECT_EQ(get(front, path, Role::Person), json::parse(R"([{"person": "a07", "effort": 9}])"));
  EXPECT_EQ(ask(front, Role::Person, Method::Put, path, {{"person", "a08"}, {"effort", 1}}).status, 403);
  EXPECT_EQ(error_of(ask(front, Role::Coach, Method::Put, path, {{"person", "a08"}}))["field"], "effort");
  EXPECT_EQ(
      error_of(ask(front, Role::Coach, Method::Put, path, {{"person", "a08"}, {"effort", -1}}))["field"],
      "effort");
  EXPECT_EQ(ask(front, Role::Coach, Method::Put, "/api/classes/never/effort", {{"effort", 1}}).status, 404);
}

}  // namespace
}  // namespace repwright
