#include "app/learning_memory.hpp"

#include <gtest/gtest.h>

#include "app/desk.hpp"
#include "unit/app/simulated_gym.hpp"

namespace repwright::app {
namespace {

using std::chrono::days;

constexpr std::chrono::sys_days monday = test::first_monday;

void scored(OpenGym& gym, const char* who, const char* board, double reps, int day) {
  domain::ScoreEntry entry;
  entry.date = std::chrono::year_month_day{monday + days(day)};
  entry.board_id = board;
  entry.person = {who};
  entry.value = domain::RepsScore{reps};
  gym.knowledge.scores.push_back(entry);
}

OpenGym three_days() {
  OpenGym gym = test::gym_of(2);
  scored(gym, "p000", "pull", 190, 0);
  scored(gym, "p001", "pull", 170, 0);
  scored(gym, "p000", "swing", 120, 7);
  scored(gym, "p000", "pull", 200, 14);
  return gym;
}

const LearnRequest request{.runs = 60, .threads = 1};

void expect_same(const GymLearning& learned, const GymLearning& anew) {
  ASSERT_EQ(learned.people.size(), anew.people.size());
  for (std::size_t p = 0; p < anew.people.size(); ++p) {
    EXPECT_EQ(learned.people[p].now, anew.people[p].now);
    EXPECT_EQ(learned.people[p].done.levels, anew.people[p].done.levels);
    EXPECT_EQ(learned.people[p].scores, anew.people[p].scores);
  }
  EXPECT_EQ(learned.forecasts.size(), anew.forecasts.size());
  EXPECT_EQ(learned.works, anew.works);
}

/// What learning to the end gives of the gym, sessions taught so far being told.
int sessions_taken(LearningMemory& memory, const OpenGym& gym) {
  int taken = 0;
  LearnRequest counting = request;
  counting.progress = [&](int, int) { ++taken; };
  const auto lessons = memory.learn(gym, counting);
  EXPECT_TRUE(lessons);
  expect_same(lessons->back().learning, learn_gym(gym, request).value());
  return taken;
}

TEST(LearningMemory, GoesOnFromTheScoresBefore) {
  OpenGym gym = three_days();
  LearningMemory memory;
  EXPECT_EQ(sessions_taken(memory, gym), 3);
  EXPECT_EQ(sessions_taken(memory, gym), 0);
  scored(gym, "p001", "pull", 180, 14);
  EXPECT_EQ(sessions_taken(memory, gym), 1);
  scored(gym, "p001", "run", 0, 21);
  EXPECT_EQ(sessions_taken(memory, gym), 1);
}

TEST(LearningMemory, ForgetsWhatAChangedScoreHadTaught) {
  OpenGym gym = three_days();
  LearningMemory memory;
  EXPECT_EQ(sessions_taken(memory, gym), 3);
  gym.knowledge.scores[2].value = domain::RepsScore{90};
  EXPECT_EQ(sessions_taken(memory, gym), 2);
  gym.knowledge.scores.pop_back();
  EXPECT_EQ(sessions_taken(memory, gym), 0);
  gym.people[0].marks.emplace_back(domain::BestSet{.movement = {"push-up"}, .reps = 40});
  EXPECT_EQ(sessions_taken(memory, gym), 2);
}

TEST(LearningMemory, KnowsWhatWasKnownBeforeEachOfTheLastDays) {
  const OpenGym gym = three_days();
  LearningMemory memory;
  const Lessons lessons = memory.learn(gym, request).value();
  ASSERT_EQ(lessons.size(), 3u);
  EXPECT_EQ(lessons[0].day, monday + days(7));
  EXPECT_EQ(lessons[1].day, monday + days(14));
  EXPECT_EQ(lessons[2].day, monday + days(15));
  EXPECT_EQ(lessons[0].learning.people[0].scores, 1);
  EXPECT_EQ(lessons[1].learning.people[0].scores, 2);
  EXPECT_EQ(lessons[2].learning.people[0].scores, 3);
}

TEST(LearningMemory, TeachesNothingWithoutScores) {
  LearningMemory memory;
  EXPECT_TRUE(memory.learn(test::gym_of(2), request).value().empty());
}

TEST(Desk, LearnsBesideWhateverElseIsAsked) {
  Desk desk(three_days());
  desk.learn_beside();
  while (desk.at_hand()->lessons() == nullptr) std::this_thread::yield();
  EXPECT_EQ(desk.at_hand()->lessons()->size(), 3u);
}

}  // namespace
}  // namespace repwright::app
