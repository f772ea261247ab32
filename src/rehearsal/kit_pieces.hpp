#pragma once

#include <vector>

#include "rehearsal/kit_demand.hpp"

namespace repwright::rehearsal {

/// A need of kit before it is rounded up: half a piece for each of two who share it.
struct KitPieces {
  KitNeed need;
  double pieces = 0;
};
/// As `kit_demand`, in the same order.
std::vector<KitPieces> kit_pieces(const WriteRequest& request);

}  // namespace repwright::rehearsal
