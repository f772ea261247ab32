#include "app/gym_learning.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/hindsight.hpp"
#include "unit/app/simulated_gym.hpp"

namespace repwright::app {
namespace {

using std::chrono::sys_days;
using test::gym_of;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr sys_days monday = test::first_monday;

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

TEST(GymLearning, ForecastsTheVersionThatWasDone) {
  OpenGym gym = gym_of(1);
  scored(gym, "p000", "pull", "6+10", monday);
  scored(gym, "p000", "pull", "6+10", monday + std::chrono::days(7));
  gym.knowledge.scores.back().version = "ring-row / incline-push-up / air-squat";
  const GymLearning learning = learned(gym);
  ASSERT_EQ(learning.forecasts.size(), 2u);
  EXPECT_GT(learning.forecasts[1].weight, 0);
  EXPECT_GT(learning.forecasts[1].p50, learning.forecasts[0].p50);
  EXPECT_FALSE(learning.forecasts[1].last);
  EXPECT_THAT(learning.notes, IsEmpty());
}

TEST(GymLearning, DoesNotMixVersions) {
  OpenGym gym = gym_of(1);
  scored(gym, "p000", "pull", "4+10", monday);
  gym.knowledge.scores.back().version = "walk-brisk";
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

TEST(GymLearning, BelievesNoScoreThatNobodyReaches) {
  for (const auto& [board, text] : {std::pair{"run", "0:01"}, {"pull", "900+0"}, {"swing", "0+1"}}) {
    OpenGym gym = gym_of(1);
    scored(gym, "p000", board, text, monday);
    const GymLearning learning = learned(gym);
    ASSERT_EQ(learning.forecasts.size(), 1u) << text;
    EXPECT_LT(learning.forecasts[0].weight, .1) << text;
    const double moved =
        learning.people[0].now.parameters.mean[0] - learning.people[0].by_marks.parameters.mean[0];
    EXPECT_LT(std::abs(moved), .1) << text;
  }
}

TEST(GymLearning, AsksWhichPieceAScoreIsOf) {
  OpenGym gym = gym_of(1);
  gym.knowledge.boards["two"] = "Part A\nAMRAP 5\n10 push-ups\n\nPart B\nAMRAP 5\n10 air squats\n";
  scored(gym, "p000", "two", "8+3", monday);
  const GymLearning learning = learned(gym);
  EXPECT_EQ(learning.people[0].scores, 0);
  EXPECT_THAT(learning.notes, ElementsAre(HasSubstr("names no piece, and the board has several")));
}

TEST(GymLearning, CountsTheSameLineOnce) {
  OpenGym once = gym_of(1), twice = gym_of(1);
  scored(once, "p000", "pull", "6+10", monday);
  scored(twice, "p000", "pull", "6+10", monday);
  scored(twice, "p000", "pull", "6+10", monday);
  EXPECT_EQ(learned(twice).people[0].now, learned(once).people[0].now);
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

}  // namespace
}  // namespace repwright::app
