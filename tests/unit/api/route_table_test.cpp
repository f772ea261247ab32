#include "api/route_table.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "support/front_desk.hpp"

namespace repwright {
namespace {

using api::Method;
using api::Request;
using api::Response;
using api::Role;

Response ask(Method method, const std::string& path, std::optional<Role> role) {
  test::FrontDesk front;
  return front.ask(method, path, "", role ? front.cookie_of(*role) : "");
}

TEST(Routes, StandOnceEach) {
  std::set<std::pair<Method, std::string_view>> seen;
  for (const api::Route& route : api::routes())
    EXPECT_TRUE(seen.emplace(route.method, route.path).second) << route.path;
}

TEST(Routes, AnswerNotFoundOutsideTheTable) {
  for (const char* path : {"/api", "/api/", "/api/nothing", "/api/read/", "/api/read/x", "api/read", "",
                           "/api/boards/../people", "/API/read"})
    EXPECT_EQ(ask(Method::Post, path, Role::Owner).status, 404) << path;
  EXPECT_EQ(ask(Method::Get, "/api/" + std::string(5000, 'x'), Role::Owner).status, 404);
}

TEST(Routes, NameTheMethodsOfAnAddress) {
  const Response given = ask(Method::Delete, "/api/read", Role::Owner);
  EXPECT_EQ(given.status, 405);
  EXPECT_EQ(given.headers.at(0), (std::pair<std::string, std::string>("Allow", "POST")));
}

TEST(Routes, AskForSignInBeforeTheyLookAtTheBody) {
  for (const api::Route& route : api::routes()) {
    if (route.access.open()) continue;
    std::string path(route.path);
    if (const auto star = path.find('*'); star != std::string::npos) path.replace(star, 1, "x");
    EXPECT_EQ(ask(route.method, path, std::nullopt).status, 401) << path;
  }
}

TEST(Routes, TakeLongOnlyWhereTheyCompute) {
  Request request;
  request.method = Method::Post;
  request.path = "/api/rehearse";
  EXPECT_EQ(api::cost_of(request), api::Cost::Long);
  request.path = "/api/read";
  EXPECT_EQ(api::cost_of(request), api::Cost::Quick);
  request.path = "/api/classes/sat-24/scores";
  EXPECT_EQ(api::cost_of(request), api::Cost::Entry);
  request.method = Method::Get;
  EXPECT_EQ(api::cost_of(request), api::Cost::Quick);
  request.path = "/nowhere";
  EXPECT_EQ(api::cost_of(request), api::Cost::Quick);
}

TEST(StatusOf, GivesEveryCodeItsStatus) {
  using base::ErrorCode;
  EXPECT_EQ(api::status_of(ErrorCode::NotFound), 404);
  EXPECT_EQ(api::status_of(ErrorCode::Invalid), 400);
  EXPECT_EQ(api::status_of(ErrorCode::Infeasible), 400);
  EXPECT_EQ(api::status_of(ErrorCode::Conflict), 409);
  EXPECT_EQ(api::status_of(ErrorCode::Unavailable), 503);
  EXPECT_EQ(api::status_of(ErrorCode::Stopped), 503);
}

TEST(RoleOf, ReadsEveryNameThatIsWritten) {
  for (const Role role : {Role::Owner, Role::Coach, Role::Relief, Role::Person})
    EXPECT_EQ(api::role_of(api::name_of(role)), role);
  EXPECT_EQ(api::role_of("boss"), std::nullopt);
}

}  // namespace
}  // namespace repwright
