#pragma once

#include <set>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/people.hpp"

namespace repwright::advice {

/// Where somebody trains away from the gym.
struct AwayPlace {
  std::set<domain::EquipmentId> kit;  // beyond a floor, a wall and what every room has (towel, chair, bag)
  base::Area room = 6 * base::metre * base::metre;
  bool quiet = false;    // people live below: nothing that lands
  bool outside = false;  // runs are possible
};

/// Whether the movement can be done there by somebody with these limits.
bool possible(const domain::Movement& movement, const AwayPlace& place, const domain::Catalogue& catalogue,
              const std::vector<domain::Limit>& limits);

/// What may stand for the movement there, the likeliest first: itself, what the kit there gives for its first
/// pattern without asking more of the body, the catalogue's swaps for these limits, its forms for home and
/// theirs, then whatever shares its first pattern, then any of its patterns. Each is possible there.
std::vector<const domain::Movement*> away_forms(const domain::Movement& written, const AwayPlace& place,
                                                const domain::Catalogue& catalogue,
                                                const std::vector<domain::Limit>& limits);

/// What is possible there without kit, whatever its pattern, the easy ones first and of these what works most
/// of the same muscles: for a line of which nothing else is possible.
std::vector<const domain::Movement*> away_others(const domain::Movement& written, const AwayPlace& place,
                                                 const domain::Catalogue& catalogue,
                                                 const std::vector<domain::Limit>& limits);

/// The drills that somebody with these limits can do there as the catalogue has them.
std::vector<domain::Drill> away_drills(const domain::Catalogue& catalogue, const AwayPlace& place,
                                       const std::vector<domain::Limit>& limits);

/// The line's amount times `factor`, in whole counts, metres in tens, seconds in fives.
domain::Amount scaled(const domain::Item& item, double factor);

/// The line done as `other`, `factor` units of it for one of the line's, without what belongs to a crowd or
/// to kit. Amounts are as `scaled` has them.
domain::Item as_form(domain::Item item, const domain::Movement& other, double factor);

}  // namespace repwright::advice
