#pragma once

#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "rehearsal/plain_fit.hpp"

/// What one person may and can do, asked by the plain fit.
namespace repwright::rehearsal {

struct Ability {
  const PlainFitRequest& request;
  const domain::Person& person;
  const body::Body& body;
  std::vector<domain::Limit> limits;  // those that hold on the day
};

/// The limit that forbids the movement to the person, or null.
const domain::Limit* forbidding(const Ability& ability, const domain::Movement& movement);

/// The kind of place that the movement needs and of which there is none today, or null.
const domain::EquipmentId* lacking(const Ability& ability, const domain::Movement& movement);

/// The unit in which the movement is really counted: the asked one if the catalogue has seconds for it, else
/// the movement's own.
domain::Unit work_unit(const domain::Movement& movement, domain::Unit asked);

/// Largest unbroken set with that load (kg, all implements together); infinite for runs and machines.
double best_set(const Ability& ability, const domain::Movement& movement, domain::Unit unit, double load);

/// The heaviest load (kg, all implements together) at which the best set is still so many reps, on the steps
/// in which that kit comes; 0 if there is none.
double load_for_reps(const Ability& ability, const domain::Movement& movement, double reps);

/// The step in which loads of the movement's kit come, kg; 0 for movements without a load.
double load_step_of(const domain::Movement& movement);

}  // namespace repwright::rehearsal
