#include "app/own_pace.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "app/known_people.hpp"
#include "board/read.hpp"
#include "unit/app/simulated_gym.hpp"

namespace repwright::app {
namespace {

constexpr std::chrono::sys_days monday = test::first_monday;
constexpr std::chrono::sys_days later = monday + std::chrono::days(21);

constexpr const char* sprint = "For time\ncap 20 min\n30 air squats\n20 sit-ups\n10 push-ups\nrun 200 m\n";

OpenGym gym_with_sprint() {
  OpenGym gym = test::gym_of(2);
  gym.knowledge.boards["sprint"] = sprint;
  gym.people[0].marks.emplace_back(domain::BestSet{.movement = {"push-up"}, .reps = 20});
  gym.people[0].marks.emplace_back(domain::BestSet{.movement = {"pull-up"}, .reps = 4});
  return gym;
}

void scored(OpenGym& gym, const std::string& board, const std::string& text, int day) {
  domain::ScoreEntry entry;
  entry.date = std::chrono::year_month_day{monday + std::chrono::days(day)};
  entry.board_id = board;
  entry.person = {"p000"};
  entry.text = text;
  entry.value = domain::read_score(text);
  gym.knowledge.scores.push_back(entry);
}

KnownPeople known_of(const OpenGym& gym) {
  return known_on(gym, learn_gym(gym, {.runs = 60, .threads = 1, .today = later}).value(), later);
}

domain::Rehearsal rehearsed(const OpenGym& gym, const KnownPeople& known, const std::string& text) {
  const board::Reading reading = board::read(text, gym.knowledge.catalogue, gym.knowledge.house);
  const domain::GymClass gym_class;
  return rehearse_class({.reading = reading,
                         .gym = gym.knowledge,
                         .people = gym.people,
                         .gym_class = gym_class,
                         .heads = {},
                         .runs = 200,
                         .threads = 1,
                         .stop = {},
                         .known = known.bodies,
                         .done = &known.done})
      .value()
      .rehearsal;
}

domain::Spread forecast(const OpenGym& gym, const KnownPeople& known, const std::string& text) {
  return rehearsed(gym, known, text).people.at(0).pieces.at(0).score;
}

/// Two scores that are so many times the forecast by marks.
OpenGym gym_after_two(const std::string& board, double times) {
  OpenGym gym = gym_with_sprint();
  const domain::Spread by_marks = forecast(gym, {}, gym.knowledge.boards.at(board));
  const auto score = static_cast<int>(std::lround(times * by_marks.p50));
  const std::string text =
      board == "pull" ? fmt::format("{}", score) : fmt::format("{}:{:02}", score / 60, score % 60);
  scored(gym, board, text, 0);
  scored(gym, board, text, 14);
  return gym;
}

double seen_in(const OpenGym& gym) {
  const domain::ScoreValue& value = gym.knowledge.scores.front().value;
  if (const auto* time = std::get_if<domain::TimeScore>(&value)) return time->time.si();
  return std::get<domain::RepsScore>(value).reps;
}

TEST(OwnPace, MovesTheForecastOfAPieceToWhatWasScoredInItTwice) {
  for (const char* board : {"sprint", "pull"})
    for (const double times : {.8, 1.2}) {
      const OpenGym gym = gym_after_two(board, times);
      const KnownPeople known = known_of(gym);
      const std::string& text = gym.knowledge.boards.at(board);
      const double seen = seen_in(gym);
      const domain::Spread by_marks = forecast(gym, {}, text);
      const domain::Spread by_level = forecast(gym, known, text);
      EXPECT_LT(std::abs(std::log(by_level.p50 / seen)), .05) << board << " " << times;
      EXPECT_LT(by_level.p90 / by_level.p10, by_marks.p90 / by_marks.p10) << board << " " << times;
      EXPECT_LT(by_level.p10, seen);
      EXPECT_GT(by_level.p90, seen);
    }
}

TEST(OwnPace, GoesOnWhereTheBodyAloneStops) {
  const OpenGym gym = gym_after_two("sprint", .75);
  const std::string& text = gym.knowledge.boards.at("sprint");
  KnownPeople known = known_of(gym);
  const double by_level = forecast(gym, known, text).p50;
  known.done = {};
  EXPECT_LT(by_level, forecast(gym, known, text).p50);
}

TEST(OwnPace, DrawsNobodyWhoCouldNotDoWhatTheyHaveDone) {
  OpenGym gym = test::gym_of(1);
  for (const int day : {0, 14}) scored(gym, "pull", "120", day);
  const std::string& text = gym.knowledge.boards.at("pull");
  KnownPeople known = known_of(gym);
  EXPECT_GT(forecast(gym, known, text).p10, 80);
}

TEST(OwnPace, KnowsTheSameWorkUnderAnotherNameAndIntent) {
  const OpenGym gym = gym_after_two("sprint", .8);
  const KnownPeople known = known_of(gym);
  const std::string again = std::string("Saturday of Invented\n\n") + sprint + "intent 4-6 min\n";
  EXPECT_NEAR(forecast(gym, known, again).p50, forecast(gym, known, sprint).p50, 1e-9);
}

TEST(OwnPace, LeavesOtherPiecesAndOtherPeopleToTheirBodies) {
  const OpenGym gym = gym_after_two("sprint", .8);
  KnownPeople known = known_of(gym);
  const std::string& other = gym.knowledge.boards.at("pull");
  const domain::Rehearsal with = rehearsed(gym, known, other);
  const domain::Rehearsal same = rehearsed(gym, known, sprint);
  known.done = {};
  EXPECT_EQ(with.people, rehearsed(gym, known, other).people);
  EXPECT_EQ(same.people.at(1), rehearsed(gym, known, sprint).people.at(1));
}

TEST(OwnPace, ChangesNoRestThatTheClockGives) {
  OpenGym gym = gym_with_sprint();
  gym.knowledge.boards["clock"] = "EMOM 6\n8 air squats\n";
  for (const int day : {0, 14}) scored(gym, "clock", "40", day);
  const domain::Rehearsal done = rehearsed(gym, known_of(gym), gym.knowledge.boards.at("clock"));
  EXPECT_NEAR(done.timetable.p50_s, rehearsed(gym, {}, gym.knowledge.boards.at("clock")).timetable.p50_s,
              1e-9);
}

TEST(OwnPace, AsksForNoStretchWhereTheScoreDoesNotGoAlongWithIt) {
  const OwnPace flat({.middle = .3}, {2.0, 2.0, 2.01, 2.0, 2.0}, {});
  EXPECT_EQ(flat.stretch({}, 0), 1);
}

TEST(OwnPace, FindsTheStretchBetweenItsPoints) {
  const OwnPace time({.middle = .15}, {4.4, 4.7, 5.0, 5.3, 5.6}, {});
  EXPECT_NEAR(std::log(time.stretch({}, 0)), .15, 1e-12);
  const OwnPace count({.middle = .15}, {5.6, 5.3, 5.0, 4.7, 4.4}, {});
  EXPECT_NEAR(std::log(count.stretch({}, 0)), -.15, 1e-12);
  const OwnPace beyond({.middle = 3}, {4.4, 4.7, 5.0, 5.3, 5.6}, {});
  EXPECT_NEAR(std::log(beyond.stretch({}, 0)), .6, 1e-12);
}

TEST(OwnPace, IsWiderByWhatDoesNotGoAlongWithTheBody) {
  body::LevelGap gap{.middle = 0, .along = {}, .own_sd = .1};
  gap.along[2] = .2;
  body::Normals strong{};
  strong[2] = 1;
  EXPECT_NEAR(gap.at(strong, -1), .1, 1e-12);
}

}  // namespace
}  // namespace repwright::app
