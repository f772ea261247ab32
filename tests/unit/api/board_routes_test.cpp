#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "api/reading_json.hpp"
#include "api/rehearsal_json.hpp"
#include "api/route_table.hpp"
#include "board/words.hpp"
#include "support/front_desk.hpp"
#include "timetable/length.hpp"

namespace repwright {
namespace {

using api::Method;
using api::Response;
using api::Role;
using nlohmann::json;

Response ask(Method method, const std::string& path, const std::string& body = "", Role role = Role::Coach) {
  test::FrontDesk front;
  return front.ask(method, path, body, front.cookie_of(role));
}

Response post(const std::string& path, const json& body, Role role = Role::Coach) {
  return ask(Method::Post, path, body.dump(), role);
}

json error_of(const Response& response) {
  return json::parse(response.body).at("error");
}

constexpr const char* thursday = "5 RFT (cap 18)\n300 m run\n9 pull-ups\n";

TEST(PostRead, AnswersWhatTheProgramPrintsAsJson) {
  const Response given = post("/api/read", {{"text", thursday}});
  EXPECT_EQ(given.status, 200);
  EXPECT_EQ(given.type, "application/json");
  const auto gym = test::demo_gym();
  const auto reading = board::read(thursday, gym->knowledge.catalogue, gym->knowledge.house);
  EXPECT_EQ(given.body, api::reading_json(
                            reading, thursday,
                            board::in_words(reading.board, gym->knowledge.catalogue, gym->knowledge.house)));
}

TEST(PostRead, AnswersMistakesOnTheBoardAsDiagnosticsAndNotAsAFault) {
  const Response given = post("/api/read", {{"text", "12:75 AMRAP\n7 burpees\n"}});
  EXPECT_EQ(given.status, 200);
  EXPECT_EQ(json::parse(given.body)["diagnostics"][0]["severity"], "error");
}

TEST(PostRead, NamesTheFieldThatIsWrong) {
  EXPECT_EQ(error_of(post("/api/read", json::object()))["field"], "text");
  EXPECT_EQ(error_of(post("/api/read", {{"text", 7}}))["field"], "text");
  EXPECT_EQ(error_of(post("/api/read", {{"text", "x"}, {"colour", 1}})),
            json::parse(R"({"text": "nothing is known of `colour`", "field": "colour"})"));
  EXPECT_EQ(error_of(post("/api/read", {{"text", std::string(20'001, 'x')}})),
            json::parse(R"({"text": "`text` is longer than 20000 bytes", "field": "text"})"));
  EXPECT_EQ(post("/api/read", {{"text", std::string(20'001, 'x')}}).status, 400);
}

TEST(PostRead, RefusesWhatIsNotJson) {
  for (const char* body : {"", "{", "[]", "null", "{\"text\": \"\xff\"}", "{\"text\": \"a\"} x"}) {
    const Response given = ask(Method::Post, "/api/read", body);
    EXPECT_EQ(given.status, 400) << body;
    EXPECT_FALSE(error_of(given)["text"].get<std::string>().empty()) << body;
  }
}

TEST(PostTidy, WritesTheBoardClean) {
  const Response given = post("/api/tidy", {{"text", "3 rft\n15 kbs 24/16\n"}});
  EXPECT_EQ(given.status, 200);
  EXPECT_EQ(json::parse(given.body)["text"], "3 rounds for time\n 15 kettlebell swings @ 24/16 kg\n");
}

TEST(PostRehearse, AnswersWhatTheProgramPrintsAsJson) {
  const Response given =
      post("/api/rehearse", {{"text", thursday}, {"class", "sat-24"}, {"runs", 20}, {"seed", 3}});
  ASSERT_EQ(given.status, 200) << given.body;
  const auto gym = test::demo_gym();
  const auto reading = board::read(thursday, gym->knowledge.catalogue, gym->knowledge.house);
  const auto expected = app::rehearse_class({.reading = reading,
                                             .gym = gym->knowledge,
                                             .people = gym->people,
                                             .gym_class = gym->classes.at("sat-24"),
                                             .heads = std::nullopt,
                                             .seed = {3},
                                             .runs = 20,
                                             .stop = {}});
  ASSERT_TRUE(expected);
  EXPECT_EQ(given.body, api::rehearsal_json(expected->rehearsal,
                                            {reading.board.title, timetable::fixed_length(reading.board)}));
}

TEST(PostRehearse, TakesTheBoardOfTheClassIfNoTextIsSent) {
  const json by_class = json::parse(post("/api/rehearse", {{"class", "sat-24"}, {"runs", 2}}).body);
  const json by_board = json::parse(
      post("/api/rehearse", {{"board", "sat-two-clocks"}, {"class", "sat-24"}, {"runs", 2}}).body);
  EXPECT_EQ(by_class, by_board);
  EXPECT_EQ(by_class["runs"], 2);
}

TEST(PostRehearse, RehearsesTwoHundredRunsUnlessAskedOtherwise) {
  EXPECT_EQ(json::parse(post("/api/rehearse", {{"text", thursday}, {"heads", 1}}).body)["runs"], 200);
}

TEST(PostRehearse, CountsHeadsPlacesOutAndRain) {
  const json base{{"text", thursday}, {"class", "sat-24"}, {"runs", 4}};
  json more = base;
  more["heads"] = 30;
  EXPECT_EQ(json::parse(post("/api/rehearse", more).body)["people"].size(), 30u);
  json out = base;
  out["out"] = {{"pull-up-bar", 2}};
  const json bars = json::parse(post("/api/rehearse", out).body)["places"];
  const json all = json::parse(post("/api/rehearse", base).body)["places"];
  ASSERT_EQ(bars.size(), all.size());
  int fewer = 0;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all[i]["place"] == "pull-up-bar") fewer = all[i]["count"].get<int>() - bars[i]["count"].get<int>();
  EXPECT_EQ(fewer, 2);
  json rain = base;
  rain["indoors"] = true;
  const std::string findings = json::parse(post("/api/rehearse", rain).body)["findings"].dump();
  EXPECT_NE(findings.find("route-closed"), std::string::npos) << findings;
}

TEST(PostRehearse, NamesTheFieldThatIsWrong) {
  const auto field = [](const json& body) { return error_of(post("/api/rehearse", body))["field"]; };
  EXPECT_EQ(field({{"runs", 5}}), "text");
  EXPECT_EQ(field({{"text", thursday}, {"runs", 0}}), "runs");
  EXPECT_EQ(field({{"text", thursday}, {"runs", 2001}}), "runs");
  EXPECT_EQ(field({{"text", thursday}, {"heads", 2.5}}), "heads");
  EXPECT_EQ(field({{"text", thursday}, {"indoors", "yes"}}), "indoors");
  EXPECT_EQ(field({{"text", thursday}, {"out", {{"rower", -1}}}}), "out.rower");
  EXPECT_EQ(field({{"text", thursday}, {"out", 1}}), "out");
  EXPECT_EQ(field({{"board", "no-such-board"}}), "board");
}

TEST(PostRehearse, SaysWhereTheBoardHasAnError) {
  const Response given = post("/api/rehearse", {{"text", "3 RFT\n12 push-ups\n12:75 AMRAP\n7 burpees\n"}});
  EXPECT_EQ(given.status, 400);
  EXPECT_EQ(error_of(given)["line"], 3);
  EXPECT_EQ(error_of(given)["column"], 1);
  EXPECT_EQ(error_of(given)["field"], "text");
}

TEST(PostRehearse, AnswersNotFoundForClassesAndPlacesThatAreNotThere) {
  EXPECT_EQ(post("/api/rehearse", {{"text", thursday}, {"class", "never"}}).status, 404);
  EXPECT_EQ(post("/api/rehearse", {{"text", thursday}, {"out", {{"trampoline", 1}}}}).status, 404);
  EXPECT_EQ(post("/api/rehearse", {{"board", "never"}}).status, 404);
}

TEST(PostRehearse, GivesAReliefCoachOnlyTheirClass) {
  const json body{{"text", thursday}, {"runs", 2}};
  json mine = body;
  mine["class"] = "sat-24";
  json other = body;
  other["class"] = "wed-morning-9";
  EXPECT_EQ(post("/api/rehearse", mine, Role::Relief).status, 200);
  EXPECT_EQ(post("/api/rehearse", other, Role::Relief).status, 403);
  EXPECT_EQ(post("/api/rehearse", body, Role::Relief).status, 403);
}

TEST(GetMovements, ListsNamesAndOtherNames) {
  const json all = json::parse(ask(Method::Get, "/api/movements").body);
  EXPECT_EQ(all.size(), test::shipped_catalogue().movements.size());
  const auto swing = std::ranges::find_if(all, [](const json& each) { return each["id"] == "kb-swing"; });
  ASSERT_NE(swing, all.end());
  EXPECT_FALSE((*swing)["aliases"].empty());
  EXPECT_FALSE((*swing)["name"].get<std::string>().empty());
}

}  // namespace
}  // namespace repwright
