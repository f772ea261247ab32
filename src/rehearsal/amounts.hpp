#pragma once

#include <optional>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "rehearsal/ability.hpp"

/// Amounts of one line as one person does it.
namespace repwright::rehearsal {

/// 0 for the first of a pair of loads or amounts, 1 for the second, by the house's tier rule; who is neither
/// m nor f takes the lighter.
int tier_of(const Ability& ability, const domain::Item& item);

/// The amount with levels and tiers resolved.
domain::Amount resolved_amount(const Ability& ability, const domain::Item& item, std::optional<int> level);

/// The largest number of units that the amount asks for in one go; 0 if it names none.
double largest_set(const domain::Amount& amount);

/// Reps at once that are always enough: what an easier version or a lighter load is chosen to give.
inline constexpr double plenty_at_once = 5;

/// So many at once make a set one to do as written: half of it, of reps never more than `plenty_at_once`.
/// Below, it would be a session of ones and twos (a judgement of ours).
double enough_at_once(domain::Unit unit, double set);

/// The amount times `factor`, in whole units of `whole` (10: to the nearest ten, at least one of them).
domain::Amount times(const domain::Amount& amount, double factor, double whole);

/// The same work by another movement: how many units of `other`, in which unit, stand for one unit written.
/// Counts stay; metres of a machine, and units that the other has not got, go by the catalogue's seconds.
struct Exchange {
  double factor = 1;
  domain::Unit unit = domain::Unit::Reps;
};
Exchange exchange(const domain::Movement& written, domain::Unit unit, const domain::Movement& other);

}  // namespace repwright::rehearsal
