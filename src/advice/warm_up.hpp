#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "base/result.hpp"
#include "domain/catalogue.hpp"
#include "domain/people.hpp"
#include "domain/solver.hpp"
#include "domain/warm_up_plan.hpp"

namespace repwright::advice {

/// Where a class warms up. `out` counts the kit that stands there anyway; what is not in it is not there.
struct WarmUpRoom {
  std::map<domain::EquipmentId, int> out;
  std::optional<base::Area> floor;  // empty: enough
  int people = 1;
};

/// The drills that a whole class can do there: two people take turns at a thing at most, and everybody has
/// the floor that the drill takes. Those that come after a session are left out.
std::vector<domain::Drill> drills_for(const std::vector<domain::Drill>& drills, const WarmUpRoom& room);

/// The drills as they are done without any kit, by the words that the catalogue has for it.
std::vector<domain::Drill> drills_without_kit(const std::vector<domain::Drill>& drills);

/// Somebody who comes, with the limits of the day.
struct WithLimits {
  std::string name;
  std::vector<domain::Limit> limits;
};

/// The first of the limits that keeps a person from the drill, or null.
const domain::Limit* limit_against(const domain::Drill& drill, const std::vector<domain::Limit>& limits);

struct WarmUpTask {
  const std::vector<domain::WarmUpNeed>& needs;
  const std::vector<domain::Drill>& drills;  // to choose from
  base::Duration length;
  const std::vector<WithLimits>& people;
  domain::SolveLimits solve;
};

/// The drills that together prepare most, the weightiest first, within the length: a joint by at least 30 s,
/// everything else by one drill; a second touch counts a little. Of equals the one with fewer people who have
/// to do something else, fewer visits to the floor, fewer drills. From two minutes on something raises the
/// pulse first, from three on something moves joints and something rehearses, from six on the last is a
/// practice round, as far as there are such drills. docs/decisions/warm-up.md has the weights. Fails with
/// Stopped as the solver does.
base::Result<domain::WarmUp> choose_warm_up(const WarmUpTask& task, domain::Solver& solver);

}  // namespace repwright::advice
