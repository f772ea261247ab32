#include "app/gym_at_hand.hpp"

#include <algorithm>
#include <utility>

#include "app/lately.hpp"

namespace repwright::app {

std::shared_ptr<const GymAtHand> GymAtHand::with_scores(const GymAtHand& before,
                                                        const std::vector<domain::ScoreEntry>& more) {
  OpenGym gym = before.gym_;
  gym.knowledge.scores.insert(gym.knowledge.scores.end(), more.begin(), more.end());
  auto after = std::make_shared<GymAtHand>(std::move(gym));
  const std::scoped_lock lock(before.remembering_);
  // Only what was done before a day counts on it.
  for (const auto& [day, done] : before.lately_)
    if (std::ranges::none_of(
            more, [&](const domain::ScoreEntry& entry) { return std::chrono::sys_days{entry.date} < day; }))
      after->lately_.emplace(day, done);
  return after;
}

board::Reading GymAtHand::read(std::string_view text) const {
  std::call_once(names_in_order_, [this] {
    reader_ = std::make_unique<board::Reader>(gym_.knowledge.catalogue, gym_.knowledge.house);
  });
  return reader_->read(text);
}

std::map<domain::PersonId, rehearsal::History> GymAtHand::lately_on(
    const std::optional<std::chrono::year_month_day>& day) const {
  if (!day) return {};
  const std::scoped_lock lock(remembering_);
  const auto [known, is_new] = lately_.try_emplace(std::chrono::sys_days{*day});
  if (is_new) known->second = lately(gym_.knowledge, gym_.people, *day);
  return known->second;
}

base::Result<ClassRehearsal> rehearse_what_if(const GymAtHand& at_hand, const board::Reading& reading,
                                              const WhatIf& what) {
  const auto gym_class = class_under(at_hand.gym(), what);
  if (!gym_class) return tl::unexpected(gym_class.error());
  ClassRequest request = request_of(at_hand.gym(), reading, *gym_class, what);
  request.history = at_hand.lately_on(gym_class->date);
  return rehearse_class(request);
}

}  // namespace repwright::app
