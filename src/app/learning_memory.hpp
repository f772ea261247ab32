#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "app/gym_learning.hpp"
#include "app/learner.hpp"

namespace repwright::app {

/// What was learned from all scores before a day.
struct LearnedBefore {
  std::chrono::sys_days day{};
  GymLearning learning;
};
/// The latest at last.
using Lessons = std::vector<LearnedBefore>;

/// Learns a gym again and again: after one more score it goes on from where the scores before it had led.
/// The answer is that of `learn_gym`. One thread at a time.
class LearningMemory {
 public:
  /// From all scores, and from those before each of the last two days with scores. Fails with Stopped.
  base::Result<Lessons> learn(const OpenGym& gym, const LearnRequest& request);

 private:
  /// A session as it was learned from.
  struct Session {
    SessionKey key;
    std::vector<domain::ScoreEntry> entries;
    bool operator==(const Session&) const = default;
  };
  /// Where so many sessions have led.
  struct Point {
    std::size_t sessions = 0;
    LearnedSoFar so_far;
  };

  bool knows(const OpenGym& gym) const;
  LearnedSoFar start_for(const OpenGym& gym, std::vector<Session> sessions);

  std::vector<domain::Person> people_;
  domain::House house_;
  domain::Hall hall_;
  std::map<std::string, std::string> boards_;
  std::vector<Session> sessions_;
  std::vector<Point> points_;
};

}  // namespace repwright::app
