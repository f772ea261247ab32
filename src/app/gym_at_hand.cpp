#include "app/gym_at_hand.hpp"

#include <utility>

#include "app/lately.hpp"

namespace repwright::app {
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
