#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/front_desk.hpp"

namespace repwright {
namespace {

using api::Method;
using api::Response;
using api::Topic;
using nlohmann::json;
using test::FrontDesk;
using testing::ElementsAre;

Response put(FrontDesk& front, const std::string& path, const json& body) {
  return front.ask(Method::Put, path, body.dump(), front.cookie_of(app::Role::Coach));
}
json get(FrontDesk& front, const std::string& path) {
  return json::parse(front.ask(Method::Get, path, "", front.cookie_of(app::Role::Coach)).body);
}
json error_of(const Response& response) {
  return json::parse(response.body).at("error");
}

TEST(PutBoard, KeepsTheTextAndTellsEverybody) {
  FrontDesk front;
  json board = get(front, "/api/boards/sat-two-clocks");
  const Response saved = put(front, "/api/boards/sat-two-clocks",
                             {{"text", "3 RFT\n9 pull-ups\n"}, {"version", board["version"]}});
  ASSERT_EQ(saved.status, 200) << saved.body;
  EXPECT_THAT(saved.changed, ElementsAre(Topic::Boards));
  EXPECT_THAT(front.changes(), ElementsAre("coach: board sat-two-clocks"));
  EXPECT_EQ(front.store.board_versions("sat-two-clocks")->back().text, "3 RFT\n9 pull-ups\n");
  board = get(front, "/api/boards/sat-two-clocks");
  EXPECT_EQ(board["text"], "3 RFT\n9 pull-ups\n");
  EXPECT_EQ(board["version"], json::parse(saved.body)["version"]);
}

TEST(PutBoard, RefusesAChangeOfAnOlderVersion) {
  FrontDesk front;
  const std::string version = get(front, "/api/boards/sat-two-clocks")["version"];
  ASSERT_EQ(put(front, "/api/boards/sat-two-clocks", {{"text", "one"}, {"version", version}}).status, 200);
  const Response late = put(front, "/api/boards/sat-two-clocks", {{"text", "two"}, {"version", version}});
  EXPECT_EQ(late.status, 409);
  EXPECT_TRUE(late.changed.empty());
  EXPECT_EQ(get(front, "/api/boards/sat-two-clocks")["text"], "one");
}

TEST(PutBoard, RefusesWhatAnotherProgramChangedMeanwhile) {
  FrontDesk front;
  const std::string version = get(front, "/api/boards/sat-two-clocks")["version"];
  ASSERT_TRUE(front.store.save_board("sat-two-clocks", "theirs", {1, {"somebody", front.now}}));
  const Response late = put(front, "/api/boards/sat-two-clocks", {{"text", "ours"}, {"version", version}});
  EXPECT_EQ(late.status, 409);
  EXPECT_EQ(
      error_of(late)["text"],
      "the board `sat-two-clocks` was changed meanwhile by somebody at 2027-05-14T00:00:00Z: look at it "
      "again");
  EXPECT_THAT(late.changed, ElementsAre(Topic::Boards)) << "the pages that are open look again as well";
  EXPECT_EQ(front.store.board_versions("sat-two-clocks")->back().text, "theirs");
}

TEST(PutBoard, GoesOnFromWhatAnotherProgramKept) {
  FrontDesk front;
  ASSERT_TRUE(front.store.save_board("sat-two-clocks", "theirs", {1, {"somebody", front.now}}));
  json board = get(front, "/api/boards/sat-two-clocks");
  EXPECT_EQ(board["text"], "theirs");
  board["text"] = "ours";
  board.erase("id");
  EXPECT_EQ(put(front, "/api/boards/sat-two-clocks", board).status, 200);
  EXPECT_EQ(front.store.board_versions("sat-two-clocks")->back().text, "ours");
}

TEST(PutBoard, SaysWhenItWasSaved) {
  FrontDesk front;
  front.now += std::chrono::hours(30);
  ASSERT_EQ(put(front, "/api/boards/thursday", {{"text", "5 RFT\n9 pull-ups\n"}}).status, 200);
  for (const json& row : get(front, "/api/boards"))
    EXPECT_EQ(row["saved_at"], row["id"] == "thursday" ? "2027-05-15T06:00:00Z" : "2027-05-14T00:00:00Z");
}

TEST(PutBoard, MakesANewOneOnlyWhereThereIsNone) {
  FrontDesk front;
  EXPECT_EQ(put(front, "/api/boards/thursday", {{"text", "5 RFT\n9 pull-ups\n"}}).status, 200);
  EXPECT_EQ(put(front, "/api/boards/thursday", {{"text", "other"}}).status, 409);
  EXPECT_EQ(put(front, "/api/boards/friday", {{"text", "x"}, {"version", "0123456789abcdef"}}).status, 409);
  EXPECT_EQ(put(front, "/api/boards/.hidden", {{"text", "x"}}).status, 404);
}

TEST(PutBoard, LeavesTheGymAsItIsWhenNothingCanBeKept) {
  FrontDesk front;
  front.store.fill_up();
  const Response failed = put(front, "/api/boards/thursday", {{"text", "5 RFT\n9 pull-ups\n"}});
  EXPECT_EQ(failed.status, 507);
  EXPECT_FALSE(front.desk.gym()->knowledge.boards.contains("thursday"));
}

TEST(PutClass, KeepsWhoIsBooked) {
  FrontDesk front;
  json sat = get(front, "/api/classes/sat-24");
  sat["class"]["booked"].erase(0);
  const Response saved = put(front, "/api/classes/sat-24", sat);
  ASSERT_EQ(saved.status, 200) << saved.body;
  EXPECT_THAT(front.changes(), ElementsAre("coach: class sat-24"));
  EXPECT_EQ(front.desk.gym()->classes.at("sat-24").booked.size(), 23u);
}

TEST(PutClass, RefusesPeopleAndBoardsThatAreNotThere) {
  FrontDesk front;
  json sat = get(front, "/api/classes/sat-24");
  sat["class"]["booked"].push_back("nobody");
  EXPECT_THAT(error_of(put(front, "/api/classes/sat-24", sat))["text"].get<std::string>(),
              testing::HasSubstr("no person is called 'nobody'"));
  json other = get(front, "/api/classes/sat-24");
  other["class"]["board_id"] = "never";
  EXPECT_EQ(put(front, "/api/classes/sat-24", other).status, 400);
  json renamed = get(front, "/api/classes/sat-24");
  renamed["class"]["id"] = "sun-24";
  EXPECT_EQ(error_of(put(front, "/api/classes/sat-24", renamed))["field"], "class.id");
  EXPECT_TRUE(front.changes().empty());
}

class DeleteClass : public testing::Test {
 protected:
  Response taken(const std::string& id, const json& body) {
    return front_.ask(Method::Delete, "/api/classes/" + id, body.dump(), front_.cookie_of(app::Role::Coach));
  }
  Response post(const std::string& path, const json& body) {
    return front_.ask(Method::Post, path, body.dump(), front_.cookie_of(app::Role::Coach));
  }
  json seen(const std::string& id) { return {{"version", get(front_, "/api/classes/" + id)["version"]}}; }
  int status_for(app::Role role, const std::string& path) {
    return front_.ask(Method::Get, path, "", front_.cookie_of(role)).status;
  }

  FrontDesk front_;
};

TEST_F(DeleteClass, TakesItAwayForEverybody) {
  const Response gone = taken("sat-24", seen("sat-24"));
  ASSERT_EQ(gone.status, 200) << gone.body;
  EXPECT_THAT(gone.changed, ElementsAre(Topic::Classes));
  EXPECT_THAT(front_.changes(), ElementsAre("coach: class sat-24: taken away"));
  EXPECT_FALSE(front_.desk.gym()->classes.contains("sat-24"));
  EXPECT_EQ(status_for(app::Role::Coach, "/api/classes/sat-24"), 404);
  EXPECT_EQ(status_for(app::Role::Relief, "/api/classes"), 401) << "who took it is signed out";
}

TEST_F(DeleteClass, RefusesWhatIsNotAsItWasSeen) {
  const json before = seen("sat-24");
  json sat = get(front_, "/api/classes/sat-24");
  sat["class"]["booked"].erase(0);
  ASSERT_EQ(put(front_, "/api/classes/sat-24", sat).status, 200);
  EXPECT_EQ(taken("sat-24", before).status, 409);
  EXPECT_EQ(error_of(taken("sat-24", json::object()))["field"], "version");
  EXPECT_EQ(taken("never", before).status, 404);
  EXPECT_TRUE(front_.desk.gym()->classes.contains("sat-24"));
}

TEST_F(DeleteClass, WaitsForTheEndOfItsClock) {
  const std::string clock = "/api/classes/sat-24/clock";
  ASSERT_EQ(post(clock, {{"act", "start"}, {"key", "k1"}, {"version", 0}, {"cue", "2.0.0"}}).status, 200);
  EXPECT_EQ(error_of(taken("sat-24", seen("sat-24")))["text"], "its clock runs: stop it first");
  ASSERT_EQ(post(clock, {{"act", "pause"}, {"key", "k2"}, {"version", 1}}).status, 200);
  EXPECT_EQ(taken("sat-24", seen("sat-24")).status, 409) << "a clock that rests goes on";
  ASSERT_EQ(post(clock, {{"act", "stop"}, {"key", "k3"}, {"version", 2}}).status, 200);
  EXPECT_EQ(taken("sat-24", seen("sat-24")).status, 200);
}

TEST_F(DeleteClass, KeepsAClassThatHasScores) {
  ASSERT_EQ(post("/api/classes/sat-24/scores", {{"person", "a07"}, {"score", "22:10"}}).status, 200);
  const Response kept = taken("sat-24", seen("sat-24"));
  EXPECT_EQ(kept.status, 409);
  EXPECT_EQ(error_of(kept)["text"], "scores of this class are kept, so it stays");
  EXPECT_TRUE(front_.desk.gym()->classes.contains("sat-24"));
}

TEST_F(DeleteClass, TakesAwayAClassWhoseBoardHasNoClock) {
  ASSERT_EQ(put(front_, "/api/boards/broken", {{"text", "12:75 AMRAP\n7 burpees\n"}}).status, 200);
  ASSERT_EQ(put(front_, "/api/classes/odd", {{"class", {{"id", "odd"}, {"board_id", "broken"}}}}).status,
            200);
  EXPECT_EQ(taken("odd", seen("odd")).status, 200);
}

TEST(PutPeople, KeepsWhatTheTableSays) {
  FrontDesk front;
  json people = get(front, "/api/people");
  people["rows"][0]["run 2000 m"] = "9:30";
  const Response saved = put(front, "/api/people", people);
  ASSERT_EQ(saved.status, 200) << saved.body;
  EXPECT_EQ(get(front, "/api/people")["rows"][0]["run 2000 m"], "9:30");
  EXPECT_EQ(put(front, "/api/people", people).status, 409);
}

TEST(PutPeople, ReadsBackTheRowsThatItGave) {
  FrontDesk front;
  const json people = get(front, "/api/people");
  ASSERT_EQ(put(front, "/api/people", people).status, 200);
  EXPECT_EQ(front.desk.gym()->people, test::demo_gym()->people);
}

TEST(PutPeople, NamesTheFirstBadCell) {
  FrontDesk front;
  json people = get(front, "/api/people");
  people["rows"][4]["sex"] = "q";
  const Response refused = put(front, "/api/people", people);
  EXPECT_EQ(refused.status, 400);
  EXPECT_EQ(error_of(refused)["field"], "rows.4.sex");
}

TEST(PutPeople, KeepsNobodyAwayFromTheirClass) {
  FrontDesk front;
  json people = get(front, "/api/people");
  people["rows"].erase(0);
  EXPECT_THAT(error_of(put(front, "/api/people", people))["text"].get<std::string>(),
              testing::HasSubstr("no person is called 'a01'"));
}

TEST(PutHallAndHouse, KeepWhatIsRead) {
  FrontDesk front;
  json hall = get(front, "/api/hall");
  hall["hall"]["name"] = "The Other Shed (invented)";
  EXPECT_THAT(put(front, "/api/hall", hall).changed, ElementsAre(Topic::Hall));
  EXPECT_EQ(get(front, "/api/gym")["name"], "The Other Shed (invented)");
  json house = get(front, "/api/house");
  EXPECT_THAT(put(front, "/api/house", house).changed, ElementsAre(Topic::House));
  house["house"] = 3;
  EXPECT_EQ(error_of(put(front, "/api/house", house))["field"], "house");
  json broken = get(front, "/api/hall");
  broken["hall"]["floor_m2"] = "wide";
  EXPECT_EQ(put(front, "/api/hall", broken).status, 400);
}

}  // namespace
}  // namespace repwright
