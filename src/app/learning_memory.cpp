#include "app/learning_memory.hpp"

#include <algorithm>

namespace repwright::app {
namespace {

constexpr std::size_t days_kept = 2;

GymLearning learning_of(const Learner& learner) {
  const LearnedSoFar& so_far = learner.so_far();
  return {.people = learner.people(),
          .forecasts = so_far.forecasts,
          .notes = so_far.notes,
          .works = so_far.works};
}

}  // namespace

bool LearningMemory::knows(const OpenGym& gym) const {
  return people_ == gym.people && house_ == gym.knowledge.house && hall_ == gym.knowledge.hall &&
         boards_ == gym.knowledge.boards;
}

/// Forgets what no longer leads to `sessions`; what is left leads as far as the answer.
LearnedSoFar LearningMemory::start_for(const OpenGym& gym, std::vector<Session> sessions) {
  if (!knows(gym)) {
    points_.clear();
    people_ = gym.people;
    house_ = gym.knowledge.house;
    hall_ = gym.knowledge.hall;
    boards_ = gym.knowledge.boards;
  }
  const auto same = std::ranges::mismatch(sessions_, sessions).in1 - sessions_.begin();
  std::erase_if(points_, [&](const Point& point) { return std::cmp_greater(point.sessions, same); });
  sessions_ = std::move(sessions);
  return points_.empty() ? LearnedSoFar{} : points_.back().so_far;
}

base::Result<Lessons> LearningMemory::learn(const OpenGym& gym, const LearnRequest& request) {
  const std::map<SessionKey, Entries> by_key = sessions_of(gym.knowledge.scores, request.of);
  std::vector<Session> sessions;
  std::vector<std::size_t> new_days;  // the first session of each
  for (const auto& [key, entries] : by_key) {
    if (sessions.empty() || sessions.back().key.first != key.first) new_days.push_back(sessions.size());
    Session& session = sessions.emplace_back(key, std::vector<domain::ScoreEntry>{});
    for (const domain::ScoreEntry* entry : entries) session.entries.push_back(*entry);
  }
  if (new_days.size() > days_kept)
    new_days.erase(new_days.begin(), new_days.end() - static_cast<std::ptrdiff_t>(days_kept));
  Learner learner(gym, request, start_for(gym, std::move(sessions)));
  const std::size_t from = points_.empty() ? 0 : points_.back().sessions;
  std::vector<Point> earlier = std::move(points_);
  points_.clear();
  Lessons lessons;
  const auto keep = [&](std::size_t done, std::chrono::sys_days before) {
    const auto known = std::ranges::find(earlier, done, &Point::sessions);
    if (known != earlier.end()) {
      lessons.push_back({before, learning_of(Learner(gym, request, known->so_far))});
      points_.push_back(std::move(*known));
      return;
    }
    if (done < from) return;
    lessons.push_back({before, learning_of(learner)});
    points_.push_back({done, learner.so_far()});
  };
  for (std::size_t s = 0; s < sessions_.size(); ++s) {
    const SessionKey& key = sessions_[s].key;
    if (std::ranges::find(new_days, s) != new_days.end()) keep(s, key.first);
    if (s < from) continue;
    if (const auto taken = learner.take(key, by_key.at(key)); !taken) return tl::unexpected(taken.error());
    if (request.progress) request.progress(static_cast<int>(s) + 1, static_cast<int>(sessions_.size()));
  }
  if (!sessions_.empty()) keep(sessions_.size(), sessions_.back().key.first + std::chrono::days(1));
  return lessons;
}

}  // namespace repwright::app
