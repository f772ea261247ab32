#include "app/known_people.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "body/knowledge.hpp"
#include "domain/people_search.hpp"

namespace repwright::app {

body::BodyEstimate without_marks(const domain::Person& person, const GymKnowledge& gym) {
  domain::Person bare = person;
  bare.marks.clear();
  return body::estimate(bare, gym.catalogue, gym.constants);
}

KnownPeople known_on(const OpenGym& gym, const GymLearning& learning, std::chrono::sys_days day) {
  KnownPeople known{.bodies = {}, .done = {.works = learning.works, .people = {}}};
  for (const LearnedPerson& learned : learning.people) {
    const domain::Person* person = domain::find_person(gym.people, learned.person);
    if (person == nullptr || learned.scores == 0) continue;
    const auto days = static_cast<double>((day - learned.until).count());
    body::Knowledge now = body::after_days({.body = learned.now, .levels = learned.done.levels},
                                           without_marks(*person, gym.knowledge), std::max(0.0, days));
    known.bodies[learned.person] = now.body;
    known.done.people[learned.person] = {std::move(now.levels), learned.done.at};
  }
  return known;
}

std::string note_of(const KnownPeople& known, const std::vector<domain::Person>& people) {
  const auto taught = std::ranges::count_if(
      people, [&](const domain::Person& person) { return known.bodies.contains(person.id); });
  if (taught == 0) return {};
  return taught == 1
             ? "the scores of one person have taught: they are forecast with them"
             : fmt::format("the scores of {} people have taught: they are forecast with them", taught);
}

}  // namespace repwright::app
