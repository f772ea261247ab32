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

Response post(FrontDesk& front, const std::string& path, const json& body) {
  return front.ask(Method::Post, path, body.dump(), front.cookie_of(Role::Owner));
}
json trail(FrontDesk& front, const std::string& path = "/api/trail") {
  return json::parse(front.ask(Method::Get, path, "", front.cookie_of(Role::Owner)).body);
}
std::vector<std::string> words_of(const json& page) {
  std::vector<std::string> words;
  for (const json& line : page.at("lines"))
    words.push_back(line["who"].get<std::string>() + ": " + line["what"].get<std::string>());
  return words;
}

TEST(Accounts, LeaveInTheTrailWhoDidWhatToThem) {
  FrontDesk front;
  const json coach{{"name", "Jo"}, {"role", "coach"}, {"password", "ten letters"}};
  EXPECT_EQ(post(front, "/api/accounts", coach).status, 200);
  EXPECT_EQ(post(front, "/api/accounts", coach).status, 200);
  EXPECT_EQ(post(front, "/api/accounts/sign-out", {{"name", "Jo"}}).status, 200);
  EXPECT_EQ(post(front, "/api/accounts/remove", {{"name", "Jo"}}).status, 200);
  EXPECT_THAT(front.changes(),
              ElementsAre("owner: account Jo: made as coach", "owner: account Jo: new password",
                          "owner: account Jo: signed out everywhere", "owner: account Jo: taken away"));
}

TEST(Accounts, AreSignedOutByTheOwnerWhereverTheyAre) {
  FrontDesk front;
  const std::string coach = front.cookie_of(Role::Coach);
  ASSERT_EQ(front.ask(Method::Get, "/api/boards", "", coach).status, 200);
  EXPECT_EQ(post(front, "/api/accounts/sign-out", {{"name", "coach"}}).status, 200);
  EXPECT_EQ(front.ask(Method::Get, "/api/boards", "", coach).status, 401);
  EXPECT_EQ(post(front, "/api/accounts/sign-out", {{"name", "nobody"}}).status, 404);
  EXPECT_EQ(post(front, "/api/accounts/sign-out", json::object()).status, 400);
}

TEST(Accounts, NeverLeaveTheGymWithoutAnOwner) {
  FrontDesk front;
  EXPECT_EQ(post(front, "/api/accounts/remove", {{"name", "owner"}}).status, 409);
  const json lesser{{"name", "owner"}, {"role", "coach"}, {"password", "ten letters"}};
  EXPECT_EQ(post(front, "/api/accounts", lesser).status, 409);
  const json second{{"name", "Mira"}, {"role", "owner"}, {"password", "ten letters"}};
  EXPECT_EQ(post(front, "/api/accounts", second).status, 200);
  EXPECT_EQ(post(front, "/api/accounts", lesser).status, 200);
  EXPECT_EQ(post(front, "/api/accounts/remove", {{"name", "Mira"}}).status, 200)
      << "the test signs in as an owner, who is one more";
}

TEST(Trail, IsReadPageByPageTheNewestFirst) {
  FrontDesk front;
  for (int i = 0; i < 60; ++i) {
    const auto done = front.store.save_board("b" + std::to_string(i), "5 RFT", {0, {"Kim", front.now}});
    ASSERT_TRUE(done);
  }
  const json first = trail(front);
  ASSERT_EQ(first["lines"].size(), 50u);
  EXPECT_EQ(words_of(first)[1], "Kim: board b59") << "the first line is of the account that asks";
  EXPECT_EQ(first["lines"][1]["at"], "2027-05-14T00:00:00Z");
  const json second = trail(front, "/api/trail/" + std::to_string(first["next"].get<int>()));
  EXPECT_EQ(words_of(second).front(), "Kim: board b10");
  EXPECT_EQ(words_of(second).back(), "owner: gym");
  EXPECT_EQ(second["next"], nullptr);
  EXPECT_EQ(front.ask(Method::Get, "/api/trail/x", "", front.cookie_of(Role::Owner)).status, 404);
}

}  // namespace
}  // namespace repwright
