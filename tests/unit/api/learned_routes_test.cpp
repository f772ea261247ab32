#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>

#include "support/front_desk.hpp"

namespace repwright {
namespace {

using api::Method;
using nlohmann::json;
using test::FrontDesk;

json asked(FrontDesk& front, const char* path, const json& body) {
  const api::Response response =
      front.ask(Method::Post, path, body.dump(), front.cookie_of(domain::Role::Coach));
  EXPECT_EQ(response.status, 200) << response.body;
  return json::parse(response.body);
}

json rehearsed(FrontDesk& front, const json& body) {
  return asked(front, "/api/rehearse", body);
}

constexpr const char* piece_name = "PIECE A";

const json& piece_of(const json& rehearsal, const std::string& person) {
  for (const json& each : rehearsal["people"])
    if (each["id"] == person)
      for (const json& piece : each["pieces"])
        if (rehearsal["pieces"].at(piece["piece"].get<std::size_t>()) == piece_name) return piece;
  throw std::runtime_error("nobody of that name does that piece");
}

/// A score in that piece of Saturday's class, so many times the forecast.
void score(FrontDesk& front, const char* person, double times) {
  const json rehearsal = rehearsed(front, {{"class", "sat-24"}});
  const long reps = std::lround(times * piece_of(rehearsal, person)["p50"].get<double>());
  asked(front, "/api/classes/sat-24/scores",
        {{"person", person}, {"piece", piece_name}, {"score", std::to_string(reps)}});
}

TEST(WhatScoresTaught, MovesTheNextForecastOfThePage) {
  FrontDesk front;
  const json next{{"board", "sat-two-clocks"}};
  const json before = rehearsed(front, next);
  score(front, "a07", 1.3);
  EXPECT_EQ(rehearsed(front, next), before) << "nobody waits for what is still being learned";
  ASSERT_TRUE(front.desk.learn());
  const json after = rehearsed(front, next);
  const double was = piece_of(before, "a07")["p50"], now = piece_of(after, "a07")["p50"];
  EXPECT_GT(now, 1.1 * was);
  EXPECT_LT(now, 1.4 * was);
  EXPECT_EQ(after["notes"].back(), "the scores of one person have taught: they are forecast with them");
}

TEST(WhatScoresTaught, LeavesTheClassAloneThatTheyWereScoredIn) {
  FrontDesk front;
  const json same{{"class", "sat-24"}};
  const json before = rehearsed(front, same);
  score(front, "a07", 1.3);
  ASSERT_TRUE(front.desk.learn());
  EXPECT_EQ(rehearsed(front, same), before);
}

TEST(WhatScoresTaught, StaysWhenTheGymIsLaidDownAnewAndGoesWithItsScore) {
  FrontDesk front;
  const json next{{"board", "sat-two-clocks"}};
  const json before = rehearsed(front, next);
  score(front, "a07", 1.3);
  ASSERT_TRUE(front.desk.learn());
  const json taught = rehearsed(front, next);
  ASSERT_TRUE(front.desk.change([](app::OpenGym& gym) {
    gym.knowledge.scores.clear();
    return base::Result<void>();
  }));
  EXPECT_EQ(rehearsed(front, next), taught);
  ASSERT_TRUE(front.desk.learn());
  EXPECT_EQ(rehearsed(front, next), before);
}

}  // namespace
}  // namespace repwright
