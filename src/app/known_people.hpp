#pragma once

#include <chrono>
#include <map>

#include "app/gym_learning.hpp"

/// What is known of people on a day, for the rehearsal of a class.
namespace repwright::app {

/// Somebody like the person of whom no mark is known.
body::BodyEstimate without_marks(const domain::Person& person, const GymKnowledge& gym);

/// Of everybody whose scores taught something: what marks and scores tell of the body on that day, the doubt
/// of the weeks since the last score included. Who is not in it is known by marks alone.
std::map<domain::PersonId, body::BodyEstimate> known_on(const OpenGym& gym, const GymLearning& learning,
                                                        std::chrono::sys_days day);

}  // namespace repwright::app
