#include "cli/taught.hpp"

#include <algorithm>

namespace repwright::cli {

base::Result<Taught> taught_by_scores(const ClassOptions& options, const ClassInputs& inputs) {
  if (inputs.gym.scores.empty()) return Taught{};
  const app::OpenGym gym{.knowledge = inputs.gym, .people = inputs.people, .classes = {}, .versions = {}};
  app::LearnRequest request{.seed = options.seed, .threads = options.threads};
  const auto& day = inputs.gym_class.date;
  if (day) request.today = std::chrono::sys_days{*day} - std::chrono::days(1);
  for (const domain::PersonId& id : inputs.gym_class.booked) request.of.insert(id);
  for (const domain::Arrival& arrival : inputs.gym_class.arrivals) request.of.insert(arrival.person);
  auto learning = app::learn_gym(gym, request);
  if (!learning) return tl::unexpected(learning.error());
  std::chrono::sys_days on = day ? std::chrono::sys_days{*day} : std::chrono::sys_days{};
  for (const app::LearnedPerson& person : learning->people) on = std::max(on, person.until);
  Taught taught{.learning = {}, .known = app::known_on(gym, *learning, on)};
  taught.learning = std::move(*learning);
  return taught;
}

}  // namespace repwright::cli
