#pragma once

#include "app/gym_learning.hpp"
#include "app/known_people.hpp"
#include "cli/inputs.hpp"

namespace repwright::cli {

/// What the scores of the gym have taught of those who may come, from days before the class.
struct Taught {
  app::GymLearning learning{};
  app::KnownPeople known{};
};

/// Nothing where there are no scores. Fails as `app::learn_gym`.
base::Result<Taught> taught_by_scores(const ClassOptions& options, const ClassInputs& inputs);

}  // namespace repwright::cli
