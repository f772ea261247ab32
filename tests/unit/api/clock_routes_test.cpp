#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/front_desk.hpp"

/// What a clock answers, and what may be done to it.
namespace repwright {
namespace {

using api::Method;
using app::Role;
using nlohmann::json;

class ClockRoutes : public testing::Test {
 protected:
  static constexpr const char* path = "/api/classes/sat-24/clock";

  api::Response act(const json& body) { return front_.ask(Method::Post, path, body.dump(), coach_); }
  /// The clock after an act that must succeed.
  json done(const json& body) {
    const api::Response given = act(body);
    EXPECT_EQ(given.status, 200) << given.body;
    return json::parse(given.body);
  }
  json clock() { return json::parse(front_.ask(Method::Get, path, "", coach_).body); }
  std::int64_t now_ms() const {
    return std::chrono::duration_cast<std::chrono::milliseconds>((front_.now + front_.ms).time_since_epoch())
        .count();
  }
  /// The id of the first cue of that kind.
  std::string cue(const std::string& kind) {
    const json all = clock();
    for (const json& each : all["cues"])
      if (each["kind"] == kind) return each["id"];
    return "";
  }
  void wait(double seconds) {
    front_.ms += std::chrono::milliseconds(static_cast<std::int64_t>(seconds * 1000));
  }

  test::FrontDesk front_;
  std::string coach_ = front_.cookie_of(Role::Coach);
};

TEST_F(ClockRoutes, TellTheTimeOfTheProgramInMilliseconds) {
  wait(0.25);
  EXPECT_EQ(json::parse(front_.ask(Method::Get, "/api/time", "", coach_).body)["now_ms"], now_ms());
}

TEST_F(ClockRoutes, ShowTheLinesOfTheBoardAsChalked) {
  const json ready = clock();
  EXPECT_EQ(ready["state"], "ready");
  EXPECT_EQ(ready["version"], 0);
  EXPECT_TRUE(ready["at"].is_null());
  std::size_t lines = 0;
  for (const json& each : ready["cues"])
    if (each["kind"] == "work") lines += each["lines"].size();
  EXPECT_GT(lines, 4u);
}

TEST_F(ClockRoutes, StartPauseAndGoOnWhereItStood) {
  done({{"act", "start"}, {"key", "k1"}, {"version", 0}, {"cue", cue("work")}});
  wait(30);
  const json held = done({{"act", "pause"}, {"key", "k2"}, {"version", 1}});
  EXPECT_EQ(held["state"], "paused");
  EXPECT_EQ(held["at"]["elapsed_ms"], 30'000);
  EXPECT_TRUE(held["ahead"].empty());
  wait(300);
  const json goes = done({{"act", "go-on"}, {"key", "k3"}, {"version", 2}});
  EXPECT_EQ(goes["at"]["elapsed_ms"], 30'000);
  EXPECT_EQ(goes["ahead"][0]["at_ms"], now_ms() - 30'000);
  EXPECT_EQ(goes["last_act"]["who"], "coach");
  EXPECT_EQ(front_.changes().back(), "coach: clock sat-24: go-on");
}

TEST_F(ClockRoutes, DoAnActThatIsSentAgainOnlyOnce) {
  const json start{{"act", "start"}, {"key", "k1"}, {"version", 0}, {"cue", cue("work")}};
  done(start);
  wait(20);
  const api::Response again = act(start);
  EXPECT_EQ(again.status, 200);
  EXPECT_TRUE(again.changed.empty());
  EXPECT_EQ(json::parse(again.body)["version"], 1);
  EXPECT_EQ(json::parse(again.body)["at"]["elapsed_ms"], 20'000);
}

TEST_F(ClockRoutes, TellEveryPageAndRefuseWhoDidNotSeeTheLastAct) {
  const api::Response first = act({{"act", "start"}, {"key", "k1"}, {"version", 0}});
  EXPECT_EQ(first.changed, std::vector{api::Topic::Clock});
  EXPECT_EQ(act({{"act", "pause"}, {"key", "k2"}, {"version", 0}}).status, 409);
  EXPECT_EQ(clock()["state"], "running");
}

TEST_F(ClockRoutes, TakeTheInstantOfTheTapAsFarAsItCanBe) {
  done({{"act", "start"}, {"key", "k1"}, {"version", 0}, {"cue", cue("work")}});
  const std::int64_t started = now_ms();
  wait(60);
  const json held = done({{"act", "pause"}, {"key", "k2"}, {"version", 1}, {"at_ms", started + 45'000}});
  EXPECT_EQ(held["at"]["elapsed_ms"], 45'000);
  const json goes = done({{"act", "go-on"}, {"key", "k3"}, {"version", 2}, {"at_ms", now_ms() + 5000}});
  EXPECT_EQ(goes["at"]["elapsed_ms"], 45'000) << "nobody acts in the future";
  const json more = done({{"act", "add"}, {"seconds", 30}, {"key", "k4"}, {"version", 3}, {"at_ms", 0}});
  EXPECT_EQ(more["last_act"]["at_ms"], now_ms()) << "and not before the last act";
}

TEST_F(ClockRoutes, RefuseWhatDoesNotFitTheClock) {
  EXPECT_EQ(act({{"act", "pause"}, {"key", "k1"}, {"version", 0}}).status, 409);
  EXPECT_EQ(act({{"act", "undo"}, {"key", "k1"}, {"version", 0}}).status, 409);
  EXPECT_EQ(act({{"act", "start"}, {"key", "k1"}, {"version", 0}, {"cue", "gone"}}).status, 409);
  EXPECT_EQ(act({{"act", "faster"}, {"key", "k1"}, {"version", 0}}).status, 400);
  EXPECT_EQ(act({{"act", "start"}, {"version", 0}}).status, 400);
  EXPECT_EQ(act({{"act", "start"}, {"key", "k1"}}).status, 400);
  EXPECT_EQ(clock()["version"], 0);
}

TEST_F(ClockRoutes, TakeTheLastActBack) {
  done({{"act", "start"}, {"key", "k1"}, {"version", 0}, {"cue", cue("work")}});
  wait(10);
  done({{"act", "pause"}, {"key", "k2"}, {"version", 1}});
  wait(10);
  const json back = done({{"act", "undo"}, {"key", "k3"}, {"version", 2}});
  EXPECT_EQ(back["state"], "running");
  EXPECT_EQ(back["at"]["elapsed_ms"], 20'000);
  EXPECT_EQ(back["last_act"]["act"], "start");
}

TEST_F(ClockRoutes, LetEverybodyLookAndAReliefCoachActOnTheirClassAlone) {
  const std::string person = front_.cookie_of(Role::Person);
  const std::string relief = front_.cookie_of(Role::Relief);
  const std::string start = R"({"act": "start", "key": "k1", "version": 0})";
  EXPECT_EQ(front_.ask(Method::Get, path, "", person).status, 200);
  EXPECT_EQ(front_.ask(Method::Post, path, start, person).status, 403);
  EXPECT_EQ(front_.ask(Method::Post, "/api/classes/wed-morning-9/clock", start, relief).status, 403);
  EXPECT_EQ(front_.ask(Method::Post, path, start, relief).status, 200);
  EXPECT_EQ(front_.ask(Method::Get, "/api/classes/never/clock", "", coach_).status, 404);
}

}  // namespace
}  // namespace repwright
