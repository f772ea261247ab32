#pragma once

#include <chrono>
#include <map>

#include "app/rehearse_class.hpp"

namespace repwright::app {

/// What each person has done in each of the four weeks before that day, from the gym's scores: every session
/// whose board the gym still has is played again by those who scored in it, and its reps count by how far the
/// score says they got. A person without scores in those weeks is not in the answer, for nothing is known.
std::map<domain::PersonId, rehearsal::History> lately(const GymKnowledge& gym,
                                                      const std::vector<domain::Person>& people,
                                                      std::chrono::sys_days day);

}  // namespace repwright::app
