#pragma once

#include <optional>
#include <vector>

#include "base/quantity.hpp"
#include "rehearsal/ability.hpp"
#include "rehearsal/board_items.hpp"

/// Loads of one line as one person does it. All masses are per implement.
namespace repwright::rehearsal {

struct LoadChoice {
  std::optional<base::Mass> load = {};     // empty: none
  std::vector<base::Mass> set_loads = {};  // one per set where they differ
  bool lighter = false;                    // than the board writes for this person
  bool felt = false;                       // begins there, and goes by what the body of the day can do
};

/// What a load is chosen for.
struct LoadRequest {
  ItemAt line;
  const domain::Movement& movement;  // the version done
  const domain::Movement* written;   // what the board says
  std::optional<int> level;
  double set = 0;                    // most reps in one go
  std::optional<double> today_best;  // kg, of the heavy part before this line
};

/// The written load (tier, level), percent of the best, effort or step over last week; for a version with
/// other kit, or where the board names none, the usual light or middle load by strength. A written load of
/// which the person has not one rep becomes the heaviest with a set of the asked size, at least five reps.
LoadChoice choose_load(const Ability& ability, const LoadRequest& request);

}  // namespace repwright::rehearsal
