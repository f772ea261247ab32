#pragma once

#include <chrono>
#include <map>

#include "app/gym_learning.hpp"

/// What is known of people on a day, for the rehearsal of a class.
namespace repwright::app {

/// Somebody like the person of whom no mark is known.
body::BodyEstimate without_marks(const domain::Person& person, const GymKnowledge& gym);

/// What scores taught of people: their bodies and the pieces that they have done.
struct KnownPeople {
  std::map<domain::PersonId, body::BodyEstimate> bodies;
  DoneBefore done;
};

/// Of everybody whose scores taught something: what marks and scores tell on that day, the doubt of the weeks
/// since the last score included. Who is not in it is known by marks alone.
/// Who is no longer of the gym is left out.
KnownPeople known_on(const OpenGym& gym, const GymLearning& learning, std::chrono::sys_days day);

/// Of how many of these people the scores have taught, in a sentence; empty where of none.
std::string note_of(const KnownPeople& known, const std::vector<domain::Person>& people);

}  // namespace repwright::app
