#include "app/gym_at_hand.hpp"

#include <algorithm>
#include <iterator>
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

void GymAtHand::keep(std::shared_ptr<const Lessons> lessons) const {
  const std::scoped_lock lock(remembering_);
  lessons_ = std::move(lessons);
  known_.clear();
}

std::shared_ptr<const Lessons> GymAtHand::lessons() const {
  const std::scoped_lock lock(remembering_);
  return lessons_;
}

std::shared_ptr<const KnownPeople> GymAtHand::known_before(
    const std::optional<std::chrono::year_month_day>& day) const {
  const std::scoped_lock lock(remembering_);
  if (lessons_ == nullptr || lessons_->empty()) return std::make_shared<const KnownPeople>();
  const std::chrono::sys_days on = day ? std::chrono::sys_days{*day} : lessons_->back().day;
  std::shared_ptr<const KnownPeople>& known = known_[on];
  if (known == nullptr) {
    const auto after = std::ranges::upper_bound(*lessons_, on, {}, &LearnedBefore::day);
    const LearnedBefore& learned = after == lessons_->begin() ? *after : *std::prev(after);
    known = std::make_shared<const KnownPeople>(known_on(gym_, learned.learning, on));
  }
  return known;
}

KnowingRequest knowing_request(const GymAtHand& at_hand, const board::Reading& reading,
                               const domain::GymClass& gym_class, const WhatIf& what) {
  KnowingRequest out{.known = at_hand.known_before(gym_class.date),
                     .request = request_of(at_hand.gym(), reading, gym_class, what)};
  out.request.history = at_hand.lately_on(gym_class.date);
  out.request.known = out.known->bodies;
  out.request.done = &out.known->done;
  return out;
}

base::Result<ClassRehearsal> rehearse_what_if(const GymAtHand& at_hand, const board::Reading& reading,
                                              const WhatIf& what) {
  const auto gym_class = class_under(at_hand.gym(), what);
  if (!gym_class) return tl::unexpected(gym_class.error());
  const KnowingRequest knowing = knowing_request(at_hand, reading, *gym_class, what);
  auto rehearsed = rehearse_class(knowing.request);
  if (!rehearsed) return rehearsed;
  if (std::string note = note_of(*knowing.known, rehearsed->people); !note.empty())
    rehearsed->rehearsal.notes.push_back(std::move(note));
  return rehearsed;
}

}  // namespace repwright::app
