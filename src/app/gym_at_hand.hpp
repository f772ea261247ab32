#pragma once

#include <chrono>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string_view>
#include <vector>

#include "app/open_gym.hpp"
#include "board/read.hpp"

namespace repwright::app {

/// One state of a gym with what is worked out of it: once, when somebody first asks. Any thread may ask.
class GymAtHand {
 public:
  explicit GymAtHand(OpenGym gym) : gym_(std::move(gym)) {}

  /// That gym with more scores. What was worked out before stays, as far as they do not touch it.
  static std::shared_ptr<const GymAtHand> with_scores(const GymAtHand& before,
                                                      const std::vector<domain::ScoreEntry>& more);

  const OpenGym& gym() const { return gym_; }

  /// As `board::read` in this gym's house.
  board::Reading read(std::string_view text) const;

  /// As `lately` of everybody; nobody without a day.
  std::map<domain::PersonId, rehearsal::History> lately_on(
      const std::optional<std::chrono::year_month_day>& day) const;

 private:
  const OpenGym gym_;
  mutable std::once_flag names_in_order_;
  mutable std::unique_ptr<const board::Reader> reader_;
  mutable std::mutex remembering_;
  mutable std::map<std::chrono::sys_days, std::map<domain::PersonId, rehearsal::History>> lately_;
};

/// Rehearses one class of the gym under a 'what if', knowing what people have done lately. Fails as
/// `rehearse_class`, and with NotFound for a class or a kind of place that is not there. `reading` was read
/// in this gym's house.
base::Result<ClassRehearsal> rehearse_what_if(const GymAtHand& at_hand, const board::Reading& reading,
                                              const WhatIf& what);

}  // namespace repwright::app
