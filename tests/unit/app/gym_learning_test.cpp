#include "app/gym_learning.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/demo_history.hpp"
#include "app/hindsight.hpp"
#include "support/shipped.hpp"

namespace repwright::app {
namespace {

using std::chrono::day;
using std::chrono::month;
using std::chrono::sys_days;
using std::chrono::year;
using testing::ElementsAre;
using testing::HasSubstr;

constexpr sys_days monday = year(2026) / month(1) / day(5);

OpenGym gym_of(int people) {
  OpenGym gym{.knowledge = {.catalogue = test::shipped_catalogue(),
                            .constants = test::shipped_constants(),
                            .house = {},
                            .hall = {},
                            .scores = {},
                            .boards = {{"pull", "AMRAP 12\n5 ring rows\n10 push-ups\n15 air squats\n"},
                                       {"run", "3 RFT\nrun 400 m\n20 sit-ups\n15 push-ups\n"},
                                       {"swing", "AMRAP 10\n12 kettlebell swings 16/12 kg\n8 burpees\n"}}},
              .people = {},
              .classes = {},
              .versions = {}};
  for (int p = 0; p < people; ++p) {
    domain::Person& person = gym.people.emplace_back();
    person.id = {fmt::format("p{:03}", p)};
    person.name = fmt::format("Person {} Invented", p);
    person.sex = p % 2 == 0 ? domain::Sex::Female : domain::Sex::Male;
    person.age = 22 + p % 30;
    person.training_years = .5 + p % 5;
    person.attends = {"mon"};
  }
  return gym;
}

void scored(OpenGym& gym, const char* who, const char* board, const char* text, sys_days date) {
  domain::ScoreEntry entry;
  entry.date = date;
  entry.board_id = board;
  entry.person = {who};
  entry.text = text;
  entry.value = domain::read_score(text);
  gym.knowledge.scores.push_back(entry);
}

GymLearning learned(const OpenGym& gym) {
  return learn_gym(gym, {.runs = 60, .threads = 1, .today = monday + std::chrono::days(400)}).value();
}

TEST(GymLearning, ForecastsEachScoreAndLetsItTeach) {
  OpenGym gym = gym_of(2);
  scored(gym, "p000", "pull", "6+10", monday);
  scored(gym, "p000", "pull", "6+20", monday + std::chrono::days(7));
  const GymLearning learning = learned(gym);
  ASSERT_EQ(learning.forecasts.size(), 2u);
  const ForecastScore &first = learning.forecasts[0], &second = learning.forecasts[1];
  EXPECT_EQ(first.value, 190);
  EXPECT_FALSE(first.last);
  EXPECT_EQ(second.last, 190);
  EXPECT_EQ(second.nth, 2);
  EXPECT_LT(std::abs(std::log(second.p50 / 190)), std::abs(std::log(first.p50 / 190)));
  EXPECT_LT(second.p90 / second.p10, first.p90 / first.p10);
  EXPECT_EQ(learning.people[0].scores, 2);
  EXPECT_EQ(learning.people[1].scores, 0);
  EXPECT_EQ(learning.people[1].now, learning.people[1].by_marks);
}

TEST(GymLearning, LearnsNothingFromDaysThatWereNotAPersonsOwn) {
  for (const domain::DayFlag flag : {domain::DayFlag::Ill, domain::DayFlag::Hot, domain::DayFlag::Easy}) {
    OpenGym gym = gym_of(1);
    scored(gym, "p000", "pull", "2+10", monday);
    gym.knowledge.scores.back().flag = flag;
    const GymLearning learning = learned(gym);
    EXPECT_EQ(learning.people[0].now, learning.people[0].by_marks);
    EXPECT_EQ(learning.forecasts.at(0).weight, 0);
    EXPECT_EQ(hindsight(learning.forecasts, gym.people).all.scores, 0);
  }
}

TEST(GymLearning, NamesWhatItLeavesOut) {
  OpenGym gym = gym_of(1);
  scored(gym, "p000", "gone", "5:00", monday);
  scored(gym, "p000", "pull", "4+10", monday + std::chrono::days(7));
  scored(gym, "p000", "pull", "9+10", monday + std::chrono::days(7));
  scored(gym, "p000", "run", "61.5 kg", monday + std::chrono::days(8));
  scored(gym, "p000", "run", "9:00", monday + std::chrono::days(900));
  const GymLearning learning = learned(gym);
  EXPECT_EQ(learning.forecasts.size(), 1u);
  EXPECT_THAT(learning.notes,
              ElementsAre(HasSubstr("2026-01-05, gone: has no board here"),
                          HasSubstr("Person 0 Invented: a second score of the same piece"),
                          HasSubstr("nothing that can be compared"), HasSubstr("lies in the future")));
}

TEST(GymLearning, DoesNotMixVersions) {
  OpenGym gym = gym_of(1);
  scored(gym, "p000", "pull", "4+10", monday);
  gym.knowledge.scores.back().version = "wall-push-up";
  const GymLearning learning = learned(gym);
  EXPECT_EQ(learning.people[0].now, learning.people[0].by_marks);
  EXPECT_THAT(learning.notes, ElementsAre(HasSubstr("another version")));
}

TEST(GymLearning, HardlyBelievesOneWrongScore) {
  OpenGym gym = gym_of(1);
  for (int week = 0; week < 6; ++week)
    scored(gym, "p000", "pull", week == 4 ? "38+0" : "4+10", monday + std::chrono::days(7 * week));
  const GymLearning learning = learned(gym);
  EXPECT_LT(learning.forecasts[4].weight, .2);
  EXPECT_LT(learning.forecasts[5].p50, 1.3 * learning.forecasts[3].p50);
}

TEST(GymLearning, StopsWhenTold) {
  OpenGym gym = gym_of(1);
  scored(gym, "p000", "pull", "4+10", monday);
  std::stop_source stop;
  stop.request_stop();
  const auto learning = learn_gym(gym, {.runs = 60, .threads = 1, .stop = stop.get_token()});
  ASSERT_FALSE(learning);
  EXPECT_EQ(learning.error().code, base::ErrorCode::Stopped);
}

/// A gym of 120 people with hidden true bodies over a year, played by a model whose constants are not ours.
OpenGym simulated_year() {
  OpenGym gym = gym_of(120);
  GymKnowledge truth = gym.knowledge;
  truth.constants.reserve_recovery *= 1.4;
  truth.constants.fade *= 1.5;
  domain::DemoPast past{.seed = {11}, .sessions = {}, .show_rate = {}, .joined = {}, .flagged = {}};
  constexpr std::array boards{"pull", "run", "swing"};
  for (std::size_t week = 0; week < 52; week += 4) {
    const char* board = boards.at(week / 4 % boards.size());
    past.sessions.push_back({.date = monday + std::chrono::days(7 * week),
                             .class_id = fmt::format("c{}", week),
                             .board_id = board,
                             .board_text = truth.boards.at(board)});
  }
  for (const domain::Person& person : gym.people) past.show_rate[person.id] = .8;
  gym.knowledge.scores = demo_history(past, truth, gym.people).value().scores;
  return gym;
}

// Simulated, so that the truth is known; the bodies are drawn from the prior, the model is deliberately wrong
// in two constants. That the last score of the same piece is not beaten yet, and that ranges hold too much,
// is told in docs/models/body.md.
TEST(GymLearning, ErrsLessWithEachScoreAndBeatsTheGroup) {
  const OpenGym gym = simulated_year();
  const GymLearning learning =
      learn_gym(gym, {.runs = 100, .today = monday + std::chrono::days(400)}).value();
  const Hindsight seen = hindsight(learning.forecasts, gym.people);
  ASSERT_GT(seen.all.scores, 1000);
  for (const HindsightRow& row : seen.by_count) {
    std::printf(
        "    %-14s %4d scores, error %4.1f %%, held %2.0f %%; again %4d: %4.1f %%, last %4.1f %%, group "
        "%4.1f %%\n",
        row.of.c_str(), row.scores, 100 * row.median_error, 100 * row.held, row.compared,
        100 * row.forecast_error, 100 * row.last_error, 100 * row.group_error);
    if (row.compared < 30) continue;
    EXPECT_LT(row.forecast_error, row.group_error) << row.of;
  }
  EXPECT_LT(seen.by_count[1].median_error, .8 * seen.by_count[0].median_error);
  EXPECT_LT(seen.by_count.back().median_error, .6 * seen.by_count[0].median_error);
  EXPECT_GT(seen.all.held, .75);
}

}  // namespace
}  // namespace repwright::app
