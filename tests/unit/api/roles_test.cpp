#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "support/front_desk.hpp"

/// Who may ask what: every route of the table as every role.
namespace repwright {
namespace {

using api::Method;
using api::Response;
using app::Role;
using nlohmann::json;
using test::FrontDesk;

constexpr std::array all_roles{Role::Owner, Role::Coach, Role::Relief, Role::Person, Role::Screen};

/// May ask: o owner, c coach, r relief coach, p person, s screen, - nobody special: also without having
/// signed in.
const std::map<std::string, std::string> expected{
    {"GET /api/me", "-"},
    {"POST /api/owner", "-"},
    {"POST /api/sign-in", "-"},
    {"POST /api/sign-out", "-"},
    {"GET /api/accounts", "oc"},
    {"POST /api/accounts", "oc"},
    {"POST /api/accounts/sign-out", "o"},
    {"POST /api/accounts/remove", "oc"},
    {"GET /api/trail", "o"},
    {"GET /api/trail/*", "o"},
    {"DELETE /api/classes/*", "oc"},
    {"GET /api/classes/*/scores", "ocrp"},
    {"POST /api/classes/*/scores", "ocrp"},
    {"GET /api/classes/*/effort", "ocrp"},
    {"PUT /api/classes/*/effort", "ocrp"},
    {"PUT /api/scores/*", "ocrp"},
    {"GET /api/scores/*/versions", "ocrp"},
    {"GET /api/classes/*/arrivals", "ocr"},
    {"POST /api/classes/*/arrivals", "ocr"},
    {"GET /api/classes/*/arrivals/effect", "ocr"},
    {"POST /api/classes/*/arrivals/nobody-else", "ocr"},
    {"POST /api/classes/*/walk-ins", "ocr"},
    {"GET /api/classes/*/runners", "ocr"},
    {"GET /api/classes/*/runs", "ocr"},
    {"POST /api/classes/*/runners", "ocr"},
    {"GET /api/classes/*/score-form", "ocrp"},
    {"GET /api/classes/*/results", "ocrs"},
    {"GET /api/emergency", "ocrps"},
    {"PUT /api/emergency", "oc"},
    {"GET /api/people/*/today", "ocp"},
    {"GET /api/people/*/consent", "p"},
    {"PUT /api/people/*/consent", "p"},
    {"GET /api/time", "ocrps"},
    {"GET /api/classes/*/clock", "ocrps"},
    {"POST /api/classes/*/clock", "ocr"},
    {"GET /api/classes/*/home", "ocrps"},
    {"GET /api/classes/*/line-up", "ocrs"},
    {"GET /api/notes", "ocr"},
    {"POST /api/notes", "ocp"},
    {"DELETE /api/notes/*", "oc"},
    {"GET /api/events", "ocrps"},
    {"GET /api/gym", "ocrps"},
    {"GET /api/boards", "oc"},
    {"PUT /api/boards/*", "oc"},
    {"GET /api/boards/*", "ocrs"},
    {"GET /api/classes", "ocrs"},
    {"PUT /api/classes/*", "oc"},
    {"GET /api/classes/*", "ocr"},
    {"PUT /api/people", "oc"},
    {"GET /api/people", "ocr"},
    {"GET /api/people/*", "ocrp"},
    {"POST /api/people/preview", "oc"},
    {"PUT /api/hall", "oc"},
    {"GET /api/hall", "ocr"},
    {"PUT /api/house", "oc"},
    {"GET /api/house", "ocr"},
    {"POST /api/read", "ocrs"},
    {"POST /api/tidy", "ocr"},
    {"POST /api/rehearse", "ocr"},
    {"POST /api/repairs", "oc"},
    {"POST /api/timetable", "ocr"},
    {"POST /api/fit", "ocr"},
    {"POST /api/warmup", "ocr"},
    {"POST /api/pairs", "ocr"},
    {"POST /api/away", "oc"},
    {"POST /api/people/*/away", "ocp"},
    {"GET /api/movements", "ocr"},
    {"GET /api/equipment", "ocr"},
    {"GET /api/limits", "oc"},
    {"GET /api/classes/*/brief", "ocr"},
    {"GET /api/people/*/scores", "ocp"},
    {"GET /api/boards/*/last", "oc"},
};

std::string words_of(const api::Route& route) {
  static const std::map<Method, std::string> names{
      {Method::Get, "GET"}, {Method::Put, "PUT"}, {Method::Post, "POST"}, {Method::Delete, "DELETE"}};
  return names.at(route.method) + " " + std::string(route.path);
}

/// Every id that stands for `*` somewhere in the demo gym.
std::vector<std::string> ids() {
  std::vector<std::string> all;
  for (const auto& [id, text] : test::demo_gym()->knowledge.boards) all.push_back(id);
  for (const auto& [id, gym_class] : test::demo_gym()->classes) all.push_back(id);
  for (const domain::Person& person : test::demo_gym()->people) all.push_back(person.id.text);
  return all;
}

std::vector<std::string> addresses(const api::Route& route) {
  const auto star = route.path.find('*');
  if (star == std::string_view::npos) return {std::string(route.path)};
  std::vector<std::string> out;
  for (const std::string& id : ids()) out.push_back(std::string(route.path).replace(star, 1, id));
  return out;
}

/// What a curious client would send to each address.
std::vector<std::string> bodies(const api::Route& route) {
  if (route.method == Method::Get) return {""};
  return {"{}", R"({"text": "5 RFT\n9 pull-ups\n12 push-ups\n"})",
          R"({"text": "5 RFT\n9 pull-ups\n12 push-ups\n", "class": "sat-24", "runs": 2})",
          "name,limits\nJo,\n"};
}

TEST(Roles, AreAllSaidForEveryRoute) {
  std::map<std::string, std::string> actual;
  for (const api::Route& route : api::routes()) {
    std::string& may = actual[words_of(route)];
    for (const Role role : all_roles)
      if (route.access.admits(role)) may += api::name_of(role).front();
    if (route.access.open()) may = "-";
  }
  EXPECT_EQ(actual, expected);
}

TEST(Roles, AreRefusedWhereTheyMayNotAsk) {
  FrontDesk front;
  std::map<Role, std::string> cookies;
  for (const Role role : all_roles) cookies[role] = front.cookie_of(role);
  for (const api::Route& route : api::routes()) {
    if (route.access.open()) continue;
    const std::string path = addresses(route).front();
    EXPECT_EQ(front.ask(route.method, path, "{}", "").status, 401) << words_of(route);
    EXPECT_EQ(front.ask(route.method, path, "{}", "session=forged").status, 401) << words_of(route);
    for (const Role role : all_roles) {
      if (route.access.admits(role)) continue;
      EXPECT_EQ(front.ask(route.method, path, "{}", cookies[role]).status, 403) << words_of(route);
    }
  }
}

/// What nobody but coaches and the person may read: limits of people other than a07, and the words of what
/// they do instead.
std::vector<std::string> secrets_of_others() {
  std::vector<std::string> secrets;
  for (const domain::Person& person : test::demo_gym()->people)
    if (person.id.text != "a07")
      for (const domain::Limit& limit : person.limits) secrets.push_back(limit.action);
  return secrets;
}

TEST(APerson, ReadsNobodyElsesLimitsByAnyRoute) {
  const auto secrets = secrets_of_others();
  ASSERT_FALSE(secrets.empty());
  FrontDesk front;
  const std::string coach = front.cookie_of(Role::Coach);
  int answered = 0;
  bool coach_sees = false;
  for (const api::Route& route : api::routes())
    for (const std::string& path : addresses(route))
      for (const std::string& body : bodies(route)) {
        // Anew for each, since signing out is a route as well.
        const Response given = front.ask(route.method, path, body, front.cookie_of(Role::Person));
        if (given.status == 200) ++answered;
        for (const std::string& secret : secrets)
          EXPECT_THAT(given.body, testing::Not(testing::HasSubstr(secret))) << words_of(route) << " " << path;
        if (path == "/api/sign-out") continue;  // the coach stays
        coach_sees = coach_sees ||
                     front.ask(route.method, path, body, coach).body.find(secrets[0]) != std::string::npos;
      }
  EXPECT_GT(answered, 0);
  EXPECT_TRUE(coach_sees) << "the test would not have noticed";
}

/// Every answer that a screen is given, whatever it asks.
TEST(AScreen, ReadsNoLimitAndNoMarkOfAnybodyByAnyRoute) {
  FrontDesk front;
  std::set<std::string> secrets{"\"marks\"", "\"limits\"", "\"actions\""};
  for (const domain::Person& person : test::demo_gym()->people)
    for (const domain::Limit& limit : person.limits) secrets.insert(limit.action);
  for (const api::Route& route : api::routes())
    for (const std::string& path : addresses(route))
      for (const std::string& body : bodies(route)) {
        const Response given = front.ask(route.method, path, body, front.cookie_of(Role::Screen));
        EXPECT_TRUE(given.changed.empty()) << words_of(route) << " changed something";
        if (given.status != 200) continue;
        for (const std::string& secret : secrets)
          EXPECT_THAT(given.body, testing::Not(testing::HasSubstr(secret))) << words_of(route) << " " << path;
      }
}

TEST(AScreen, SeesTheNextClassAndNoOther) {
  FrontDesk front;
  const std::string cookie = front.cookie_of(Role::Screen);
  const auto body = [&](const std::string& path) {
    return json::parse(front.ask(Method::Get, path, "", cookie).body);
  };
  EXPECT_EQ(body("/api/classes").size(), 1u);
  EXPECT_EQ(body("/api/classes")[0]["id"], body("/api/gym")["next_class"]);
  const std::string board = body("/api/classes")[0]["board"];
  for (const auto& [id, text] : test::demo_gym()->knowledge.boards)
    EXPECT_EQ(front.ask(Method::Get, "/api/boards/" + id, "", cookie).status, id == board ? 200 : 403) << id;
}

TEST(APerson, ReadsTheirOwnPage) {
  FrontDesk front;
  const std::string cookie = front.cookie_of(Role::Person);
  const Response own = front.ask(Method::Get, "/api/people/a07", "", cookie);
  EXPECT_EQ(own.status, 200);
  EXPECT_EQ(json::parse(own.body)["id"], "a07");
  EXPECT_EQ(front.ask(Method::Get, "/api/people/a08", "", cookie).status, 403);
  EXPECT_EQ(front.ask(Method::Get, "/api/people/nobody", "", cookie).status, 403);
  EXPECT_EQ(json::parse(front.ask(Method::Get, "/api/gym", "", cookie).body)["next_class"], nullptr);
}

TEST(AReliefCoach, SeesNothingAnyMoreWhenTheClassIsOver) {
  FrontDesk front;
  front.now = std::chrono::sys_days{std::chrono::year{2027} / 5 / 16} + std::chrono::hours(23);
  const auto status = [&] {
    return front.ask(Method::Get, "/api/classes/sat-24", "", front.cookie_of(Role::Relief)).status;
  };
  EXPECT_EQ(status(), 200);
  front.now += std::chrono::hours(2);
  EXPECT_EQ(status(), 401);
  const Response me = front.ask(Method::Get, "/api/me", "", front.cookie_of(Role::Relief));
  EXPECT_EQ(json::parse(me.body)["role"], nullptr);
}

TEST(AReliefCoach, SeesOneClassItsBoardAndItsPeopleInActionWords) {
  FrontDesk front;
  const std::string cookie = front.cookie_of(Role::Relief);
  const auto status = [&](const std::string& path) {
    return front.ask(Method::Get, path, "", cookie).status;
  };
  const auto body = [&](const std::string& path) {
    return json::parse(front.ask(Method::Get, path, "", cookie).body);
  };
  EXPECT_EQ(status("/api/classes/sat-24"), 200);
  EXPECT_EQ(status("/api/classes/wed-morning-9"), 403);
  EXPECT_EQ(body("/api/classes").size(), 1u);
  EXPECT_EQ(status("/api/boards/sat-two-clocks"), 200);
  for (const auto& [id, text] : test::demo_gym()->knowledge.boards)
    EXPECT_EQ(status("/api/boards/" + id), id == "sat-two-clocks" ? 200 : 403) << id;
  EXPECT_EQ(body("/api/gym")["next_class"], "sat-24");
  const json people = body("/api/people")["rows"];
  EXPECT_EQ(people.size(), 24u);
  for (const json& row : people)
    for (const auto& [key, value] : row.items())
      EXPECT_THAT((std::set<std::string>{"id", "name", "actions"}), testing::Contains(key));
}

}  // namespace
}  // namespace repwright
