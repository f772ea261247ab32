#include "app/gym_learning.hpp"

#include "app/learner.hpp"

namespace repwright::app {
base::Result<GymLearning> learn_gym(const OpenGym& gym, const LearnRequest& request) {
  Learner learner(gym, request, {});
  const std::map<SessionKey, Entries> sessions = sessions_of(gym.knowledge.scores, request.of);
  int done = 0;
  for (const auto& [session, entries] : sessions) {
    if (const auto taken = learner.take(session, entries); !taken) return tl::unexpected(taken.error());
    if (request.progress) request.progress(++done, static_cast<int>(sessions.size()));
  }
  GymLearning out{.people = learner.people(), .forecasts = {}, .notes = {}, .works = {}};
  LearnedSoFar all = std::move(learner).so_far();
  out.forecasts = std::move(all.forecasts);
  out.notes = std::move(all.notes);
  out.works = std::move(all.works);
  return out;
}

}  // namespace repwright::app
