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

constexpr const char* good_password = "ten letters";

Response post(FrontDesk& front, const std::string& path, const json& body, const std::string& cookies = "") {
  return front.ask(Method::Post, path, body.dump(), cookies);
}
json me(FrontDesk& front, const std::string& cookies) {
  return json::parse(front.ask(Method::Get, "/api/me", "", cookies).body);
}
/// What the browser sends from now on.
std::string cookie_from(const Response& response) {
  for (const auto& [name, value] : response.headers)
    if (name == "Set-Cookie") return value.substr(0, value.find(';'));
  return "";
}
std::string value_of(const Response& response, const std::string& header) {
  for (const auto& [name, value] : response.headers)
    if (name == header) return value;
  return "";
}
std::string owner_of(FrontDesk& front) {
  return cookie_from(
      post(front, "/api/owner",
           {{"token", front.gate.new_owner_token()}, {"name", "Mira"}, {"password", good_password}}));
}

TEST(FirstStart, MakesTheOwnerByTheLinkOfTheTerminalOnce) {
  FrontDesk front;
  EXPECT_EQ(me(front, ""), json::parse(R"({"role": null, "first_start": true})"));
  const std::string token = front.gate.new_owner_token();
  const json body{{"token", token}, {"name", "Mira"}, {"password", good_password}};
  const Response made = post(front, "/api/owner", body);
  ASSERT_EQ(made.status, 200) << made.body;
  EXPECT_EQ(me(front, cookie_from(made)), json::parse(R"({"name": "Mira", "role": "owner"})"));
  EXPECT_EQ(me(front, "")["first_start"], false);
  EXPECT_EQ(post(front, "/api/owner", body).status, 404);
}

TEST(FirstStart, RefusesATokenThatIsNotThatOfTheTerminal) {
  FrontDesk front;
  const json body{{"token", "token-1"}, {"name", "Mira"}, {"password", good_password}};
  EXPECT_EQ(post(front, "/api/owner", body).status, 404);
  const std::string old = front.gate.new_owner_token();
  front.gate.new_owner_token();
  EXPECT_EQ(post(front, "/api/owner", {{"token", old}, {"name", "Mira"}}).status, 404);
}

TEST(FirstStart, KeepsTheLinkWhenThePasswordIsTooShort) {
  FrontDesk front;
  const std::string token = front.gate.new_owner_token();
  EXPECT_EQ(post(front, "/api/owner", {{"token", token}, {"name", "Mira"}, {"password", "short"}}).status,
            400);
  EXPECT_EQ(
      post(front, "/api/owner", {{"token", token}, {"name", "Mira"}, {"password", good_password}}).status,
      200);
}

TEST(FirstStart, SignsInTheOwnerWhoIsThereByALaterLink) {
  FrontDesk front;
  owner_of(front);
  const Response again =
      post(front, "/api/owner", {{"token", front.gate.new_owner_token()}, {"name", "Mallory"}});
  EXPECT_EQ(me(front, cookie_from(again))["name"], "Mira");
  EXPECT_EQ(front.accounts.all()->size(), 1u);
}

TEST(SignIn, TakesNameAndPassword) {
  FrontDesk front;
  owner_of(front);
  const Response in = post(front, "/api/sign-in", {{"name", "Mira"}, {"password", good_password}});
  ASSERT_EQ(in.status, 200) << in.body;
  EXPECT_THAT(value_of(in, "Set-Cookie"), testing::HasSubstr("; HttpOnly; SameSite=Strict; "));
  EXPECT_EQ(me(front, cookie_from(in))["role"], "owner");
}

TEST(SignIn, SaysTheSameForAWrongNameAndAWrongPassword) {
  FrontDesk front;
  owner_of(front);
  const Response name = post(front, "/api/sign-in", {{"name", "Mirra"}, {"password", good_password}});
  const Response password = post(front, "/api/sign-in", {{"name", "Mira"}, {"password", "eleven letters"}});
  EXPECT_EQ(name.status, 401);
  EXPECT_EQ(name.status, password.status);
  EXPECT_EQ(name.body, password.body);
  EXPECT_EQ(cookie_from(password), "");
}

TEST(SignIn, RestsAfterFiveFailuresUntilTheFirstIsFifteenMinutesOld) {
  FrontDesk front;
  owner_of(front);
  const json wrong{{"name", "Mira"}, {"password", "eleven letters"}};
  const json right{{"name", "Mira"}, {"password", good_password}};
  for (int i = 0; i < 5; ++i) EXPECT_EQ(post(front, "/api/sign-in", wrong).status, 401);
  const Response resting = post(front, "/api/sign-in", right);
  EXPECT_EQ(resting.status, 429);
  EXPECT_EQ(value_of(resting, "Retry-After"), "900");
  front.now += std::chrono::minutes(15);
  EXPECT_EQ(post(front, "/api/sign-in", right).status, 200);
}

TEST(SignIn, EndsWithSignOutAndWithItsTime) {
  FrontDesk front;
  const std::string first = owner_of(front);
  EXPECT_EQ(post(front, "/api/sign-out", json::object(), first).status, 200);
  EXPECT_EQ(me(front, first)["role"], nullptr);
  const std::string second =
      cookie_from(post(front, "/api/sign-in", {{"name", "Mira"}, {"password", good_password}}));
  front.now += app::coach_stays;
  EXPECT_EQ(me(front, second)["role"], nullptr);
}

TEST(SignIn, RefusesWhatAnotherSiteMadeTheBrowserSend) {
  FrontDesk front;
  api::Request request;
  request.method = Method::Post;
  request.path = "/api/sign-out";
  request.cookies = owner_of(front);
  request.host = "127.0.0.1:8750";
  request.origin = "http://elsewhere";
  request.content_type = "application/json";
  request.body = "{}";
  EXPECT_EQ(front.ask(request).status, 403);
  EXPECT_EQ(me(front, request.cookies)["role"], "owner");
}

TEST(Accounts, GiveAPersonALinkThatWorksWithTheirPinAlone) {
  FrontDesk front;
  const std::string owner = owner_of(front);
  const Response made = post(front, "/api/accounts",
                             {{"name", "p7"}, {"role", "person"}, {"person", "a07"}, {"pin", "4711"}}, owner);
  ASSERT_EQ(made.status, 200) << made.body;
  const std::string link = json::parse(made.body)["link"];
  EXPECT_EQ(post(front, "/api/sign-in", {{"link", link}, {"pin", "4712"}}).status, 401);
  EXPECT_EQ(post(front, "/api/sign-in", {{"link", "x"}, {"pin", "4711"}}).status, 401);
  EXPECT_EQ(post(front, "/api/sign-in", {{"name", "p7"}, {"password", "4711"}}).status, 401);
  const Response in = post(front, "/api/sign-in", {{"link", link}, {"pin", "4711"}});
  EXPECT_EQ(me(front, cookie_from(in)), json::parse(R"({"name": "p7", "role": "person", "person": "a07"})"));
}

TEST(Accounts, GiveAScreenAndWhoTakesOneClassALinkThatIsEnough) {
  FrontDesk front;
  const std::string owner = owner_of(front);
  const auto link_of = [&](const json& account) {
    const Response made = post(front, "/api/accounts", account, owner);
    EXPECT_EQ(made.status, 200) << made.body;
    return json::parse(made.body)["link"].get<std::string>();
  };
  const std::string wall = link_of({{"name", "The wall"}, {"role", "screen"}});
  const std::string relief = link_of({{"name", "Jo"}, {"role", "relief"}, {"class", "sat-24"}});
  const std::string on_wall = cookie_from(post(front, "/api/sign-in", {{"link", wall}}));
  EXPECT_EQ(me(front, on_wall), json::parse(R"({"name": "The wall", "role": "screen"})"));
  const std::string jo = cookie_from(post(front, "/api/sign-in", {{"link", relief}}));
  EXPECT_EQ(me(front, jo)["class"], "sat-24");
  EXPECT_EQ(post(front, "/api/sign-in", {{"name", "Jo"}, {"password", ""}}).status, 400);
  EXPECT_EQ(post(front, "/api/sign-in", {{"name", "The wall"}, {"password", "anything else"}}).status, 401);
  EXPECT_EQ(
      post(front, "/api/accounts", {{"name", "TV"}, {"role", "screen"}, {"password", good_password}}, owner)
          .status,
      400);

  EXPECT_EQ(post(front, "/api/accounts/remove", {{"name", "The wall"}}, owner).status, 200);
  EXPECT_EQ(me(front, on_wall)["role"], nullptr) << "a link that was taken away signs nobody in any more";
  EXPECT_EQ(post(front, "/api/sign-in", {{"link", wall}}).status, 401);

  front.now += std::chrono::days(3);
  EXPECT_EQ(me(front, jo)["role"], nullptr) << "the class is over";
}

TEST(Accounts, OfScreensAreACoachsToMakeAndToTakeAwayAndNoOthers) {
  FrontDesk front;
  const std::string owner = owner_of(front);
  const std::string coach = front.cookie_of(Role::Coach);
  const json screen{{"name", "The wall"}, {"role", "screen"}};
  EXPECT_EQ(post(front, "/api/accounts", screen, coach).status, 200);
  const json list = json::parse(front.ask(Method::Get, "/api/accounts", "", coach).body);
  ASSERT_EQ(list.size(), 1u);
  EXPECT_EQ(list[0]["name"], "The wall");
  const json second{{"name", "Jo"}, {"role", "coach"}, {"password", good_password}};
  EXPECT_EQ(post(front, "/api/accounts", second, coach).status, 403);
  EXPECT_EQ(post(front, "/api/accounts", {{"name", "Mira"}, {"role", "screen"}}, coach).status, 403)
      << "an account of another kind is not replaced by a screen";
  EXPECT_EQ(post(front, "/api/accounts/remove", {{"name", "Mira"}}, coach).status, 403);
  EXPECT_EQ(post(front, "/api/accounts/remove", {{"name", "The wall"}}, coach).status, 200);
}

TEST(Accounts, SignOutWhoeverIsReplaced) {
  FrontDesk front;
  const std::string owner = owner_of(front);
  const json coach{{"name", "Jo"}, {"role", "coach"}, {"password", good_password}};
  ASSERT_EQ(post(front, "/api/accounts", coach, owner).status, 200);
  const std::string jo =
      cookie_from(post(front, "/api/sign-in", {{"name", "Jo"}, {"password", good_password}}));
  EXPECT_EQ(me(front, jo)["role"], "coach");
  ASSERT_EQ(post(front, "/api/accounts", coach, owner).status, 200);
  EXPECT_EQ(me(front, jo)["role"], nullptr);
}

TEST(Accounts, NameTheFieldThatIsWrong) {
  FrontDesk front;
  const std::string owner = owner_of(front);
  const auto field = [&](const json& body) {
    return json::parse(post(front, "/api/accounts", body, owner).body)["error"]["field"];
  };
  EXPECT_EQ(field({{"role", "coach"}, {"password", good_password}}), "name");
  EXPECT_EQ(field({{"name", "Jo"}, {"role", "boss"}, {"password", good_password}}), "role");
  EXPECT_EQ(field({{"name", "Jo"}, {"role", "relief"}, {"password", good_password}}), "class");
  EXPECT_EQ(field({{"name", "Jo"}, {"role", "relief"}, {"class", "never"}, {"password", good_password}}),
            "class");
  EXPECT_EQ(field({{"name", "Jo"}, {"role", "person"}, {"person", "nobody"}, {"pin", "4711"}}), "person");
  EXPECT_EQ(
      post(front, "/api/accounts", {{"name", "Jo"}, {"role", "coach"}, {"password", "short"}}, owner).status,
      400);
}

TEST(Accounts, AreNothingForWhoIsNoOwnerAndNoCoach) {
  FrontDesk front;
  for (const Role role : {Role::Relief, Role::Person, Role::Screen}) {
    EXPECT_EQ(front.ask(Method::Get, "/api/accounts", "", front.cookie_of(role)).status, 403);
    EXPECT_EQ(front.ask(Method::Post, "/api/accounts", "{}", front.cookie_of(role)).status, 403);
  }
  const Response list = front.ask(Method::Get, "/api/accounts", "", front.cookie_of(Role::Owner));
  EXPECT_EQ(list.status, 200);
  EXPECT_THAT(list.body, testing::Not(testing::HasSubstr("hash")));
}

TEST(Events, GoOnAsAStream) {
  FrontDesk front;
  EXPECT_TRUE(front.ask(Method::Get, "/api/events", "", front.cookie_of(Role::Coach)).stream);
  EXPECT_FALSE(front.ask(Method::Get, "/api/events", "", "").stream);
}

}  // namespace
}  // namespace repwright
