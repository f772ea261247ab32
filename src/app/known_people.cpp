#include "app/known_people.hpp"

#include <algorithm>

#include "body/knowledge.hpp"

namespace repwright::app {

body::BodyEstimate without_marks(const domain::Person& person, const GymKnowledge& gym) {
  domain::Person bare = person;
  bare.marks.clear();
  return body::estimate(bare, gym.catalogue, gym.constants);
}

std::map<domain::PersonId, body::BodyEstimate> known_on(const OpenGym& gym, const GymLearning& learning,
                                                        std::chrono::sys_days day) {
  std::map<domain::PersonId, body::BodyEstimate> known;
  for (std::size_t p = 0; p < learning.people.size(); ++p) {
    const LearnedPerson& learned = learning.people[p];
    if (learned.scores == 0) continue;
    const auto days = static_cast<double>((day - learned.until).count());
    known[learned.person] = body::after_days({.body = learned.now, .levels = {}},
                                             without_marks(gym.people[p], gym.knowledge), std::max(0.0, days))
                                .body;
  }
  return known;
}

}  // namespace repwright::app
