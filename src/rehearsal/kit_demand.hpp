#pragma once

#include <optional>
#include <vector>

#include "base/quantity.hpp"
#include "domain/ids.hpp"
#include "rehearsal/write_script.hpp"

namespace repwright::rehearsal {

/// Loose kit of one size that one piece needs at the same time, against what the hall has.
struct KitNeed {
  int piece = 0;
  domain::StepId step;  // the first line that needs it
  domain::EquipmentId equipment;
  std::optional<base::Mass> mass;      // of kettlebells, dumbbells, balls, bags
  std::optional<base::Length> height;  // of boxes, where the board says one
  int needed = 0;
  int available = 0;
};

/// What every piece needs, one row per kind and size that the hall lists. A heat needs it once, a circuit for
/// the people of one station, a pair of whom one works once.
std::vector<KitNeed> kit_demand(const WriteRequest& request);

}  // namespace repwright::rehearsal
