#include "app/class_brief.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped.hpp"

namespace repwright::app {
namespace {

using std::chrono::day;
using std::chrono::month;
using std::chrono::year;
using std::chrono::year_month_day;

constexpr year_month_day class_day = year(2027) / month(3) / day(26);

/// A gym with three people, two kettlebells of 16 kg and one class on a Friday.
struct Brief : ::testing::Test {
  OpenGym gym{.knowledge = {.catalogue = test::shipped_catalogue(),
                            .constants = test::shipped_constants(),
                            .house = {},
                            .hall = {},
                            .scores = {},
                            .boards = {{"swings", "5 RFT\n10 KB swings @ 16 kg\n10 sit-ups\n"}}},
              .people = {},
              .classes = {},
              .versions = {}};

  Brief() {
    for (const char* id : {"ana", "bo", "cy"}) {
      domain::Person& person = gym.people.emplace_back();
      person.id = {id};
      person.name = std::string(id) + " Invented";
    }
    gym.knowledge.hall.unlimited = false;
    gym.knowledge.hall.kit = {
        {.equipment = {"kettlebell"}, .mass = 16 * base::kilogram, .height = {}, .size = "", .count = 2}};
    domain::GymClass& friday = gym.classes["friday"];
    friday.id = "friday";
    friday.date = class_day;
    friday.board_id = "swings";
  }
  void scored(const char* who, year_month_day date) {
    domain::ScoreEntry entry;
    entry.date = date;
    entry.board_id = "swings";
    entry.person = {who};
    entry.text = "5:00";
    gym.knowledge.scores.push_back(entry);
  }
  ClassBrief brief() const {
    auto made = class_brief(GymAtHand(gym), "friday", {});
    EXPECT_TRUE(made) << made.error().message;
    return made.value_or(ClassBrief{});
  }
};

TEST_F(Brief, SaysWhoIsNewAndWhoIsBackAfterAWhile) {
  scored("ana", year(2027) / month(3) / day(24));
  scored("ana", year(2027) / month(3) / day(17));
  scored("bo", year(2027) / month(3) / day(5));
  const ClassBrief made = brief();
  ASSERT_EQ(made.people.size(), 3u);
  EXPECT_EQ(made.people[0].standing, Standing::Regular);
  EXPECT_EQ(made.people[0].sessions, 2);
  EXPECT_EQ(made.people[0].last_came, year(2027) / month(3) / day(24));
  EXPECT_EQ(made.people[1].standing, Standing::Back);
  EXPECT_EQ(made.people[2].standing, Standing::First);
  EXPECT_FALSE(made.people[2].last_came);
}

TEST_F(Brief, CallsNobodyNewWhereTheGymHasNoScores) {
  for (const Comer& comer : brief().people) EXPECT_EQ(comer.standing, Standing::Unknown);
}

TEST_F(Brief, CountsTwoScoresOfADayOnceAndTheDayItselfNot) {
  scored("ana", year(2027) / month(3) / day(24));
  scored("ana", year(2027) / month(3) / day(24));
  scored("ana", class_day);
  EXPECT_EQ(brief().people[0].sessions, 1);
}

TEST_F(Brief, SetsOutWhatThePeopleNeedAgainstWhatTheHallHas) {
  const ClassBrief made = brief();
  ASSERT_EQ(made.set_out.size(), 1u);
  EXPECT_EQ(made.set_out[0].equipment.text, "kettlebell");
  EXPECT_EQ(made.set_out[0].mass, 16 * base::kilogram);
  EXPECT_EQ(made.set_out[0].needed, 3);
  EXPECT_EQ(made.set_out[0].available, 2);
}

TEST_F(Brief, SetsOutOnceWhatTwoPiecesNeed) {
  gym.knowledge.boards["swings"] =
      "PIECE A\n3 RFT\n10 KB swings @ 16 kg\nRest 3:00\nPIECE B\nAMRAP 6\n10 KB swings @ 16 kg\n10 sit-ups\n";
  const ClassBrief made = brief();
  ASSERT_EQ(made.set_out.size(), 1u);
  EXPECT_EQ(made.set_out[0].needed, 3);
}

TEST_F(Brief, OfABoardWithoutWorkSetsOutNothing) {
  gym.knowledge.boards["swings"] = "";
  EXPECT_EQ(brief().people.size(), 3u);
  EXPECT_TRUE(brief().set_out.empty());
}

TEST_F(Brief, IsOfAClassAndABoardThatAreThere) {
  EXPECT_EQ(class_brief(GymAtHand(gym), "monday", {}).error().code, base::ErrorCode::NotFound);
  gym.knowledge.boards.clear();
  EXPECT_EQ(class_brief(GymAtHand(gym), "friday", {}).error().code, base::ErrorCode::NotFound);
}

}  // namespace
}  // namespace repwright::app
