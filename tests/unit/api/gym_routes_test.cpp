#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "api/version.hpp"
#include "store/hall_json.hpp"
#include "support/files.hpp"
#include "support/front_desk.hpp"

namespace repwright {
namespace {

using api::Method;
using api::Response;
using nlohmann::json;

json get(const std::string& path) {
  test::FrontDesk front;
  const Response given = front.ask(Method::Get, path, "", front.cookie_of(app::Role::Owner));
  EXPECT_EQ(given.status, 200) << path << given.body;
  return json::parse(given.body);
}

int status_of(const std::string& path) {
  test::FrontDesk front;
  return front.ask(Method::Get, path, "", front.cookie_of(app::Role::Owner)).status;
}

json preview(const std::string& csv) {
  test::FrontDesk front;
  const Response given =
      front.ask(Method::Post, "/api/people/preview", csv, front.cookie_of(app::Role::Owner));
  EXPECT_EQ(given.status, 200) << given.body;
  return json::parse(given.body);
}

TEST(GetGym, SaysWhoseItIsAndWhatComesNext) {
  EXPECT_EQ(get("/api/gym"), json::parse(R"j({"name": "The Lock Shed (invented)", "invented": true,
    "today": "2027-05-14", "role": "owner", "next_class": "sat-24", "unread": null})j"));
}

TEST(GetGym, HasNoNextClassWhenAllAreOver) {
  test::FrontDesk front;
  front.now += std::chrono::days(100);
  const Response given = front.ask(Method::Get, "/api/gym", "", front.cookie_of(app::Role::Owner));
  EXPECT_EQ(json::parse(given.body)["next_class"], nullptr);
}

TEST(GetBoards, ListsThemWithTheirTitles) {
  const json boards = get("/api/boards");
  ASSERT_EQ(boards.size(), test::demo_gym()->knowledge.boards.size());
  for (const json& board : boards) EXPECT_TRUE(test::demo_gym()->knowledge.boards.contains(board["id"]));
}

TEST(GetBoard, GivesTheTextAsChalkedAndItsVersion) {
  const json board = get("/api/boards/sat-two-clocks");
  EXPECT_EQ(board["text"], test::demo_gym()->knowledge.boards.at("sat-two-clocks"));
  EXPECT_EQ(board["version"], api::version_of(board["text"].get<std::string>()));
  EXPECT_EQ(status_of("/api/boards/never"), 404);
}

TEST(GetClasses, ListDateStartMinutesBoardAndHeads) {
  const json classes = get("/api/classes");
  const auto sat = std::ranges::find_if(classes, [](const json& each) { return each["id"] == "sat-24"; });
  ASSERT_NE(sat, classes.end());
  EXPECT_EQ(*sat, json::parse(R"({"id": "sat-24", "date": "2027-05-15", "start": "09:00", "minutes": 75,
    "board": "sat-two-clocks", "booked": 24})"));
}

TEST(GetClass, GivesWhatTheGymFolderKeeps) {
  const json given = get("/api/classes/sat-24");
  EXPECT_EQ(given["class"]["booked"].size(), 24u);
  EXPECT_EQ(given["class"]["board_id"], "sat-two-clocks");
  EXPECT_EQ(given["version"].get<std::string>().size(), 16u);
  EXPECT_EQ(status_of("/api/classes/never"), 404);
}

TEST(GetPeople, GivesTheColumnsOfTheGymFolderAndOnlyFilledCells) {
  const json people = get("/api/people");
  EXPECT_EQ(people["rows"].size(), test::demo_gym()->people.size());
  EXPECT_EQ(people["columns"][0], "id");
  EXPECT_EQ(people["rows"][0]["name"], "Yusra Brandvoll");
  EXPECT_EQ(people["rows"][0]["run 2000 m"], "9:48");
  EXPECT_FALSE(people["rows"][0].contains("max wall-push-up"));
  EXPECT_EQ(status_of("/api/people/nobody"), 404);
}

TEST(GetHall, GivesWhatTheGymFolderKeeps) {
  EXPECT_EQ(get("/api/hall")["hall"], json::parse(store::write_hall(test::demo_gym()->knowledge.hall)));
  EXPECT_TRUE(get("/api/house")["house"].is_object());
}

TEST(PostPeoplePreview, GivesTheRowsOfAGoodTable) {
  const json seen = preview(test::text_of_file(test::source_dir() / "data/demo/people.csv"));
  EXPECT_EQ(seen["bad"], json::array());
  EXPECT_EQ(seen["rows"].size(), test::demo_gym()->people.size());
}

TEST(PostPeoplePreview, NamesEveryBadCellAndGivesNoRows) {
  const json seen = preview("name,sex,run 400 m\nJo,f,1:20\nPia,q,fast\n");
  EXPECT_EQ(seen["rows"], nullptr);
  ASSERT_EQ(seen["bad"].size(), 2u);
  EXPECT_EQ(seen["bad"][0]["line"], 3);
  EXPECT_EQ(seen["bad"][0]["column"], "sex");
  EXPECT_EQ(seen["bad"][0]["row"], "Pia");
  EXPECT_EQ(seen["bad"][1]["column"], "run 400 m");
}

TEST(VersionOf, IsTheFnvHashOfTheContent) {
  // FNV-1a, 64 bits, of "" and "foobar": draft-eastlake-fnv, test vectors.
  EXPECT_EQ(api::version_of(""), "cbf29ce484222325");
  EXPECT_EQ(api::version_of("foobar"), "85944171f73967e8");
}

}  // namespace
}  // namespace repwright
