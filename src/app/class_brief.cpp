#include "app/class_brief.hpp"

#include "app/gym_lookup.hpp"

#include <algorithm>
#include <tuple>

namespace repwright::app {
namespace {

auto size_of(const SetOut& lot) {
  return std::tuple(lot.name, lot.mass, lot.height);
}

std::vector<SetOut> set_out_of(const std::vector<rehearsal::KitNeed>& needs,
                               const domain::Catalogue& catalogue) {
  std::vector<SetOut> lots;
  for (const rehearsal::KitNeed& need : needs) {
    if (need.needed == 0) continue;
    const domain::Equipment* equipment = catalogue.find(need.equipment);
    const SetOut lot{.equipment = need.equipment,
                     .name = equipment ? equipment->name : need.equipment.text,
                     .mass = need.mass,
                     .height = need.height,
                     .needed = need.needed,
                     .available = need.available};
    const auto same = std::ranges::find(lots, size_of(lot), size_of);
    if (same == lots.end())
      lots.push_back(lot);
    else
      same->needed = std::max(same->needed, lot.needed);
  }
  std::ranges::sort(lots, [](const SetOut& a, const SetOut& b) { return size_of(a) < size_of(b); });
  return lots;
}

}  // namespace

base::Result<ClassBrief> class_brief(const GymAtHand& at_hand, const std::string& class_id,
                                     const std::stop_token& stop) {
  const OpenGym& gym = at_hand.gym();
  const auto known = class_called(gym, class_id);
  if (!known) return tl::unexpected(known.error());
  const domain::GymClass& gym_class = **known;
  const auto chalk = chalk_of(gym, gym_class);
  if (!chalk) return tl::unexpected(chalk.error());
  const auto attendance = who_comes(gym.people, gym_class, std::nullopt);
  if (!attendance) return tl::unexpected(attendance.error());
  ClassBrief brief{.people = comers_of(*attendance, gym.knowledge, gym_class), .set_out = {}};

  const board::Reading reading = at_hand.read(**chalk);
  const WhatIf as_it_is{.class_id = class_id, .heads = {}, .out = {}, .runs = 1, .stop = stop};
  const auto rehearsed = rehearse_what_if(at_hand, reading, as_it_is);
  if (rehearsed)
    brief.set_out = set_out_of(rehearsed->kit, gym.knowledge.catalogue);
  else if (rehearsed.error().code != base::ErrorCode::Invalid)
    return tl::unexpected(rehearsed.error());
  return brief;
}

}  // namespace repwright::app
