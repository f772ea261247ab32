#include "rehearsal/amounts.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "base/require.hpp"

namespace repwright::rehearsal {

namespace {

template <class... Cases>
struct Overloaded : Cases... {
  using Cases::operator()...;
};

double seconds_of(const domain::Movement& movement, domain::Unit unit) {
  const auto at = movement.pace.find(unit);
  return at == movement.pace.end() ? 1 : std::max(0.01, at->second.sustained);
}

/// Of two tiers by choice: the first for whoever does the larger load at least as often as written in one
/// go, or, without a load, for whoever keeps a 5-minute kilometre.
int chosen_tier(const Ability& ability, const domain::Item& item) {
  const domain::Movement* movement = item.movement ? ability.request.catalogue.find(*item.movement) : nullptr;
  if (!movement || !item.loads || item.loads->masses.empty())
    return ability.body.critical_speed >= 1000.0 / 300 ? 0 : 1;
  const double load = item.loads->masses.front().si() * item.implements;
  const double set = std::max(1.0, largest_set(item.amount));
  return best_set(ability, *movement, item.unit, load) >= set ? 0 : 1;
}

double rounded(double value, double whole) {
  return value <= 0 ? 0 : std::max(whole, std::round(value / whole) * whole);
}

}  // namespace

int tier_of(const Ability& ability, const domain::Item& item) {
  if (ability.request.house.tiers == domain::TierRule::ByChoice) return chosen_tier(ability, item);
  return ability.person.sex == domain::Sex::Male ? 0 : 1;
}

domain::Amount resolved_amount(const Ability& ability, const domain::Item& item, std::optional<int> level) {
  if (const auto* tiers = std::get_if<domain::Tiers>(&item.amount))
    return tier_of(ability, item) == 0 ? tiers->first : tiers->second;
  if (const auto* levels = std::get_if<domain::PerLevel>(&item.amount)) {
    base::require(!levels->amounts.empty(), "an amount by level names at least one");
    const auto at = std::min(static_cast<std::size_t>(level.value_or(0)), levels->amounts.size() - 1);
    return levels->amounts[at];
  }
  return item.amount;
}

double largest_set(const domain::Amount& amount) {
  return std::visit(
      Overloaded{[](double count) { return count; }, [](const domain::AtLeast& open) { return open.count; },
                 [](const domain::Max&) { return 0.0; }, [](const domain::Range& range) { return range.max; },
                 [](const domain::PerSet& sets) {
                   double most = 0;
                   for (const domain::SetAmount& set : sets.amounts)
                     most = std::max(
                         most,
                         std::visit([](const auto& one) { return largest_set(domain::Amount(one)); }, set));
                   return most;
                 },
                 [](const domain::Climb& climb) { return climb.start; },
                 [](const domain::Tiers& tiers) { return std::max(tiers.first, tiers.second); },
                 [](const domain::PerLevel& levels) {
                   return levels.amounts.empty() ? 0.0 : std::ranges::max(levels.amounts);
                 },
                 [](const domain::WhileWorking&) { return 0.0; }},
      amount);
}

double enough_at_once(domain::Unit unit, double set) {
  const double most = unit == domain::Unit::Reps ? plenty_at_once : set;
  return std::clamp(set / 2, 1.0, std::max(1.0, most));
}

domain::Amount times(const domain::Amount& amount, double factor, double whole) {
  if (factor == 1) return amount;
  const auto scaled = [&](double value) { return rounded(value * factor, whole); };
  return std::visit(Overloaded{[&](double count) -> domain::Amount { return scaled(count); },
                               [&](const domain::AtLeast& open) -> domain::Amount {
                                 return domain::AtLeast{scaled(open.count)};
                               },
                               [&](const domain::Range& range) -> domain::Amount {
                                 return domain::Range{scaled(range.min), scaled(range.max)};
                               },
                               [&](const domain::PerSet& sets) -> domain::Amount {
                                 domain::PerSet more = sets;
                                 for (domain::SetAmount& set : more.amounts) {
                                   if (auto* count = std::get_if<double>(&set)) *count = scaled(*count);
                                   if (auto* open = std::get_if<domain::AtLeast>(&set))
                                     open->count = scaled(open->count);
                                 }
                                 return more;
                               },
                               [&](const domain::Climb& climb) -> domain::Amount {
                                 return domain::Climb{scaled(climb.start), scaled(climb.step)};
                               },
                               [&](const domain::Tiers& tiers) -> domain::Amount {
                                 return domain::Tiers{scaled(tiers.first), scaled(tiers.second)};
                               },
                               [&](const domain::PerLevel& levels) -> domain::Amount {
                                 domain::PerLevel more = levels;
                                 for (double& count : more.amounts) count = scaled(count);
                                 return more;
                               },
                               [&](const auto& other) -> domain::Amount { return other; }},
                    amount);
}

Exchange exchange(const domain::Movement& written, domain::Unit unit, const domain::Movement& other) {
  const bool machine_metres = unit == domain::Unit::Metres && written.id != other.id &&
                              (written.category == "ergometer" || other.category == "ergometer");
  if (other.pace.contains(unit) && !machine_metres) return {1, unit};
  const domain::Unit counted = work_unit(other, unit);
  return {seconds_of(written, unit) / seconds_of(other, counted), counted};
}

}  // namespace repwright::rehearsal
