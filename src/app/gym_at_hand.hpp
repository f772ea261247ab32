#pragma once

#include <chrono>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string_view>
#include <vector>

#include "app/known_people.hpp"
#include "app/learning_memory.hpp"
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

  /// What is known of people before a class of that day, from scores of earlier days as far as they have been
  /// learned; nothing until `keep` was told. Without a day, or before all that is kept: the nearest there is.
  std::shared_ptr<const KnownPeople> known_before(
      const std::optional<std::chrono::year_month_day>& day) const;

  /// What the scores taught, of this gym or, until that is learned, of an earlier state of it; null: nothing.
  void keep(std::shared_ptr<const Lessons> lessons) const;
  std::shared_ptr<const Lessons> lessons() const;

 private:
  const OpenGym gym_;
  mutable std::once_flag names_in_order_;
  mutable std::unique_ptr<const board::Reader> reader_;
  mutable std::mutex remembering_;
  mutable std::map<std::chrono::sys_days, std::map<domain::PersonId, rehearsal::History>> lately_;
  mutable std::shared_ptr<const Lessons> lessons_;
  mutable std::map<std::chrono::sys_days, std::shared_ptr<const KnownPeople>> known_;
};

/// What to rehearse of one class of the gym, knowing what people have done lately and what their scores have
/// taught. It refers to all of its arguments but `what`.
struct KnowingRequest {
  std::shared_ptr<const KnownPeople> known;
  ClassRequest request;
};
KnowingRequest knowing_request(const GymAtHand& at_hand, const board::Reading& reading,
                               const domain::GymClass& gym_class, const WhatIf& what);

/// Rehearses one class of the gym under a 'what if', knowing as `knowing_request` does. Fails as
/// `rehearse_class`, and with NotFound for a class or a kind of place that is not there. `reading` was read
/// in this gym's house.
base::Result<ClassRehearsal> rehearse_what_if(const GymAtHand& at_hand, const board::Reading& reading,
                                              const WhatIf& what);

}  // namespace repwright::app
