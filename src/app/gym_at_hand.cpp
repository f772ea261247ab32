#include "app/gym_at_hand.hpp"

#include <utility>

#include "app/lately.hpp"

namespace repwright::app {
namespace {

base::Result<domain::GymClass> class_of(const OpenGym& gym, const WhatIf& what) {
  domain::GymClass gym_class;
  if (!what.class_id.empty()) {
    const auto known = gym.classes.find(what.class_id);
    if (known == gym.classes.end())
      return base::failure(base::ErrorCode::NotFound, "no class is called `" + what.class_id + "`");
    gym_class = known->second;
  }
  gym_class.indoors = gym_class.indoors || what.indoors;
  for (const auto& [place, count] : what.out) {
    domain::EquipmentId id{place};
    if (gym.knowledge.catalogue.find(id) == nullptr)
      return base::failure(base::ErrorCode::NotFound, "no kind of place is called `" + place + "`");
    gym_class.faults.push_back({std::move(id), count, "out today"});
  }
  return gym_class;
}

}  // namespace

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
  const OpenGym& gym = at_hand.gym();
  const auto gym_class = class_of(gym, what);
  if (!gym_class) return tl::unexpected(gym_class.error());
  return rehearse_class({.reading = reading,
                         .gym = gym.knowledge,
                         .people = gym.people,
                         .gym_class = *gym_class,
                         .heads = what.heads,
                         .seed = {what.seed},
                         .runs = what.runs,
                         .threads = what.threads,
                         .stop = what.stop,
                         .history = at_hand.lately_on(gym_class->date)});
}

}  // namespace repwright::app
