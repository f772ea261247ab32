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

Response ask(FrontDesk& front, Role role, Method method, const std::string& path, const json& body = {}) {
  return front.ask(method, path, body.is_null() ? "" : body.dump(), front.cookie_of(role));
}
json get(FrontDesk& front, const std::string& path, Role role = Role::Coach) {
  return json::parse(ask(front, role, Method::Get, path).body);
}

constexpr const char* form = "/api/classes/sat-24/score-form";

TEST(ScoreForm, IsFilledInFromTheRehearsalForEverybodyWhoComes) {
  FrontDesk front;
  const json pieces = get(front, form)["pieces"];
  ASSERT_FALSE(pieces.empty());
  for (const json& piece : pieces) {
    EXPECT_EQ(piece["people"].size(), 24u);
    for (const json& person : piece["people"]) {
      EXPECT_LE(person["least"], person["forecast"]["p10"]);
      EXPECT_GE(person["most"], person["forecast"]["p90"]);
      EXPECT_NE(person["done_as"], "");
    }
  }
}

TEST(ScoreForm, SaysWhatAPieceHoldsHowItGoesAndWhatIsDoneInWords) {
  FrontDesk front;
  const json pieces = get(front, "/api/classes/wed-19-for-12/score-form")["pieces"];
  ASSERT_EQ(pieces.size(), 2u);
  const json& every = pieces[1];
  EXPECT_EQ(every["scheme"], "Every 3 minutes, seven times");
  for (const json& person : every["people"]) {
    EXPECT_EQ(person["holds"], 140) << "3 + 5 + 12 reps seven times";
    EXPECT_LE(person["forecast"]["p90"], person["holds"]);
  }
  EXPECT_EQ(every["people"][0]["done_as"], "run / pull-up / push-up / box-step-up");
  EXPECT_EQ(every["people"][0]["said_as"], "run, pull-up, push-up, box step-up");
  const json& lifts = pieces[0];
  EXPECT_TRUE(lifts["people"][0]["holds"].is_null()) << "a load has no end";
}

TEST(ScoreForm, LeavesOutSkillThatNobodyLoadsOrTimes) {
  FrontDesk front;
  std::vector<std::string> titles;
  const json pieces = get(front, "/api/classes/wed-morning-9/score-form")["pieces"];
  for (const json& piece : pieces) titles.push_back(piece["title"]);
  EXPECT_EQ(titles, (std::vector<std::string>{"Stations", "For distance 8:00"}));
  for (const json& piece : pieces) EXPECT_EQ(piece["piece"], piece["title"]) << "the board has others, too";
}

TEST(LineUp, SaysWhoWorksWithWhomToCoachesAndScreens) {
  FrontDesk front;
  const json pieces = get(front, "/api/classes/tue-pairs-13/line-up", Role::Screen)["pieces"];
  ASSERT_EQ(pieces.size(), 1u) << "its skill has no places";
  const json people = pieces[0]["people"];
  EXPECT_EQ(people.size(), 13u);
  std::size_t in_a_three = 0;
  for (const json& person : people) {
    EXPECT_GE(person["with"].size(), 1u);
    if (person["with"].size() == 2) ++in_a_three;
  }
  EXPECT_EQ(in_a_three, 3u);
  EXPECT_TRUE(get(front, "/api/classes/wed-morning-9/line-up")["pieces"].empty());
}

TEST(ScoreForm, ShowsAPersonTheirOwnRowAlone) {
  FrontDesk front;
  const json pieces = get(front, form, Role::Person)["pieces"];
  for (const json& piece : pieces) {
    ASSERT_EQ(piece["people"].size(), 1u);
    EXPECT_EQ(piece["people"][0]["id"], "a07");
  }
}

/// The name of the class's first piece in rounds.
std::string piece_in_rounds(FrontDesk& front) {
  const json pieces = get(front, form)["pieces"];
  for (const json& piece : pieces)
    if (piece["form"] == "rounds") return piece["piece"];
  throw std::runtime_error("no piece is scored in rounds");
}

void score(FrontDesk& front, const std::string& person, const std::string& text) {
  const json line{
      {"person", person}, {"piece", piece_in_rounds(front)}, {"score", text}, {"done_as", "as-written"}};
  ASSERT_EQ(ask(front, Role::Coach, Method::Post, "/api/classes/sat-24/scores", line).status, 200);
}

TEST(Results, RankOnlyThoseWhoChoseToBeRanked) {
  FrontDesk front;
  score(front, "a07", "4+3");
  score(front, "a08", "5+1");
  const auto rankings = [&]() -> json {
    const json pieces = get(front, "/api/classes/sat-24/results")["pieces"];
    for (const json& piece : pieces)
      if (piece["piece"] == piece_in_rounds(front)) return piece["rankings"];
    return nullptr;
  };
  EXPECT_TRUE(rankings().empty());
  ASSERT_EQ(ask(front, Role::Person, Method::Put, "/api/people/a07/consent", {{"in_rankings", true}}).status,
            200);
  EXPECT_TRUE(rankings().empty()) << "one alone is no ranking";
  const auto paper = front.store.paper(domain::Paper::Rankings);
  ASSERT_TRUE(front.store.save_paper(domain::Paper::Rankings, paper->text + "a08\n",
                                     {paper->saved.version, {"person", front.now}}));
  ASSERT_EQ(rankings().size(), 1u);
  EXPECT_EQ(rankings()[0]["rows"][0]["place"], 1);
  EXPECT_EQ(rankings()[0]["rows"][0]["score"], "5+1");
  ASSERT_EQ(ask(front, Role::Person, Method::Put, "/api/people/a07/consent", {{"in_rankings", false}}).status,
            200);
  EXPECT_TRUE(rankings().empty());
}

TEST(Consent, IsSaidByThePersonAlone) {
  FrontDesk front;
  EXPECT_EQ(get(front, "/api/people/a07/consent", Role::Person)["in_rankings"], false);
  EXPECT_EQ(ask(front, Role::Coach, Method::Put, "/api/people/a07/consent", {{"in_rankings", true}}).status,
            403);
  EXPECT_EQ(ask(front, Role::Person, Method::Put, "/api/people/a08/consent", {{"in_rankings", true}}).status,
            403);
  EXPECT_EQ(ask(front, Role::Person, Method::Put, "/api/people/a07/consent", {{"wants", true}}).status, 400);
}

TEST(OwnToday, TellsAPersonTheirVersionTargetAndActions) {
  FrontDesk front;
  const json today = get(front, "/api/people/a07/today", Role::Person)["today"];
  ASSERT_TRUE(today.is_object());
  EXPECT_EQ(today["class"], "sat-24");
  ASSERT_FALSE(today["pieces"].empty());
  EXPECT_FALSE(today["pieces"][0]["lines"].empty());
  EXPECT_EQ(today["pieces"][0]["heat"], nullptr) << "there is one";
  EXPECT_EQ(today["pieces"][0]["heats"], 1);
  EXPECT_LE(today["pieces"][0]["forecast"]["p10"], today["pieces"][0]["forecast"]["p50"]);
  EXPECT_THAT(today["told"].dump(), testing::HasSubstr("flat palms"));
  EXPECT_EQ(ask(front, Role::Person, Method::Get, "/api/people/a08/today").status, 403);
}

}  // namespace
}  // namespace repwright
