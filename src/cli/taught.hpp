#pragma once

#include <map>
#include <string>

#include "app/gym_learning.hpp"
#include "cli/inputs.hpp"

namespace repwright::cli {

/// What the scores of the gym have taught of those who may come, from days before the class.
struct Taught {
  app::GymLearning learning{};
  std::map<domain::PersonId, body::BodyEstimate> known{};
};

/// Nothing where there are no scores. Fails as `app::learn_gym`.
base::Result<Taught> taught_by_scores(const ClassOptions& options, const ClassInputs& inputs);

/// Of how many people the scores have taught, in a sentence.
std::string note_of(const Taught& taught);

}  // namespace repwright::cli
