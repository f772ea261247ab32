#pragma once

#include <algorithm>

#include "domain/catalogue.hpp"
#include "domain/hall.hpp"
#include "domain/house.hpp"

namespace repwright::domain {

/// Where and by which rules something is proposed.
struct Premises {
  const Catalogue& catalogue;
  const Hall& hall;
  const House& house;
};

/// Whether the movement may be proposed there in place of another. What needs bars, rings, machines or stairs
/// may not where the hall lists places and none of that kind; a swung pull may not where the house wants
/// pull-ups strict. A coach who writes such a thing anyway knows where and how.
inline bool may_propose(const Premises& premises, const Movement& movement) {
  const auto stands_here = [&](const EquipmentId& id) {
    const Equipment* equipment = premises.catalogue.find(id);
    const bool a_place =
        id.text == "stairs" ||
        (equipment != nullptr && (equipment->kind == "fixed" || equipment->kind == "machine"));
    return !a_place || premises.hall.places_of(id).value_or(0) > 0;
  };
  const bool pulls = !movement.patterns.empty() && movement.patterns.front() == "pull";
  const bool swung = pulls && std::ranges::find(movement.flags, "swing") != movement.flags.end();
  if (swung && !premises.house.pull_up_may_swing) return false;
  return premises.hall.unlimited || std::ranges::all_of(movement.equipment, stands_here);
}

}  // namespace repwright::domain
