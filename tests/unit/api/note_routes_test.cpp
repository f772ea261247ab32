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

Response post(FrontDesk& front, const json& body) {
  return front.ask(Method::Post, "/api/notes", body.dump(), front.cookie_of(Role::Coach));
}
std::vector<std::string> texts(FrontDesk& front, Role role) {
  std::vector<std::string> out;
  for (const json& note : json::parse(front.ask(Method::Get, "/api/notes", "", front.cookie_of(role)).body))
    out.push_back(note["text"]);
  return out;
}

TEST(Notes, AreReadWithWhoWroteThemUntilTheyWearOff) {
  FrontDesk front;
  ASSERT_EQ(post(front, {{"text", "door code changed"}, {"until", "2027-05-15"}}).status, 200);
  const Response made = post(front, {{"person", "a07"}, {"text", "likes the end bar"}});
  EXPECT_THAT(made.changed, ElementsAre(api::Topic::People));
  const std::string coach = front.cookie_of(Role::Coach);
  EXPECT_EQ(json::parse(front.ask(Method::Get, "/api/notes", "", coach).body),
            json::parse(R"([{"number": 1, "person": null, "text": "door code changed", "until": "2027-05-15",
                             "by": "coach", "at": "2027-05-14T00:00:00Z"},
                            {"number": 2, "person": "a07", "text": "likes the end bar", "until": null,
                             "by": "coach", "at": "2027-05-14T00:00:00Z"}])"));
  front.now += std::chrono::days(2);
  EXPECT_THAT(texts(front, Role::Coach), ElementsAre("likes the end bar"));
}

TEST(Notes, AreTakenAway) {
  FrontDesk front;
  ASSERT_EQ(post(front, {{"text", "door code changed"}}).status, 200);
  const std::string coach = front.cookie_of(Role::Coach);
  EXPECT_EQ(front.ask(Method::Delete, "/api/notes/1", "", coach).status, 200);
  EXPECT_EQ(front.ask(Method::Delete, "/api/notes/1", "", coach).status, 404);
  EXPECT_EQ(front.ask(Method::Delete, "/api/notes/one", "", coach).status, 404);
  EXPECT_TRUE(texts(front, Role::Coach).empty());
  EXPECT_THAT(front.changes(), ElementsAre("coach: note 1", "coach: note 1: taken away"));
}

TEST(Notes, OfOneKeyAreKeptOnce) {
  FrontDesk front;
  const json note{{"person", "a07"}, {"text", "likes the end bar"}, {"key", "k1"}};
  EXPECT_EQ(json::parse(post(front, note).body)["number"], 1);
  EXPECT_EQ(json::parse(post(front, note).body)["number"], 1);
  EXPECT_EQ(texts(front, Role::Coach).size(), 1u);
}

TEST(Notes, LetAPersonTellTheCoachesSomethingOfThemselvesAndOfNobodyElse) {
  FrontDesk front;
  const auto tell = [&](const json& body) {
    return front.ask(Method::Post, "/api/notes", body.dump(), front.cookie_of(Role::Person)).status;
  };
  EXPECT_EQ(tell({{"text", "the bar slipped"}}), 200);
  EXPECT_EQ(tell({{"text", "is slow"}, {"person", "a08"}}), 403);
  EXPECT_THAT(texts(front, Role::Coach), ElementsAre("the bar slipped"));
  EXPECT_EQ(
      json::parse(front.ask(Method::Get, "/api/notes", "", front.cookie_of(Role::Coach)).body)[0]["person"],
      "a07");
}

TEST(Notes, NameTheFieldThatIsWrong) {
  FrontDesk front;
  const auto field = [&](const json& body) { return json::parse(post(front, body).body)["error"]["field"]; };
  EXPECT_EQ(field(json::object()), "text");
  EXPECT_EQ(field({{"text", "  "}}), "text");
  EXPECT_EQ(field({{"text", std::string(501, 'x')}}), "text");
  EXPECT_EQ(field({{"text", "x"}, {"until", "tomorrow"}}), "until");
  EXPECT_EQ(field({{"text", "x"}, {"until", "2027-05-13"}}), "until");
  EXPECT_EQ(field({{"text", "x"}, {"person", "nobody"}}), "person");
  EXPECT_TRUE(texts(front, Role::Coach).empty());
}

TEST(Notes, OfOthersThanTheirClassAreNotForAReliefCoach) {
  FrontDesk front;
  domain::GymClass sat = front.desk.gym()->classes.at("sat-24");
  const std::string met = sat.booked.front().text;
  const std::string other = sat.booked.back().text;
  sat.booked.pop_back();
  sat.arrivals.clear();
  ASSERT_TRUE(front.store.save_class(sat, {1, {"owner", front.now}}));
  ASSERT_EQ(post(front, {{"person", other}, {"text", "of another class"}}).status, 200);
  ASSERT_EQ(post(front, {{"person", met}, {"text", "of the class"}}).status, 200);
  ASSERT_EQ(post(front, {{"text", "of the gym"}}).status, 200);
  EXPECT_THAT(texts(front, Role::Relief), ElementsAre("of the class", "of the gym"));
}

}  // namespace
}  // namespace repwright
