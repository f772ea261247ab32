#include "app/open_gym.hpp"

#include "app/gym_lookup.hpp"

#include <utility>

namespace repwright::app {

OpenGym open_gym(store::KeptGym kept, domain::Catalogue catalogue, body::Constants constants) {
  store::GymFolder& gym = kept.gym;
  OpenGym open;
  open.knowledge = {std::move(catalogue), std::move(constants),  std::move(gym.house),
                    std::move(gym.hall),  std::move(gym.scores), std::move(gym.boards)};
  open.people = std::move(gym.people);
  open.classes = std::move(gym.classes);
  open.versions = std::move(kept.versions);
  return open;
}

base::Result<domain::GymClass> class_under(const OpenGym& gym, const WhatIf& what) {
  domain::GymClass gym_class;
  if (!what.class_id.empty()) {
    const auto known = class_called(gym, what.class_id);
    if (!known) return tl::unexpected(known.error());
    gym_class = **known;
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

ClassRequest request_of(const OpenGym& gym, const board::Reading& reading, const domain::GymClass& gym_class,
                        const WhatIf& what) {
  return {.reading = reading,
          .gym = gym.knowledge,
          .people = gym.people,
          .gym_class = gym_class,
          .heads = what.heads,
          .seed = {what.seed},
          .runs = what.runs,
          .threads = what.threads,
          .keep_draws = what.keep_draws,
          .stop = what.stop};
}

}  // namespace repwright::app
