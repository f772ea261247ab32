#pragma once

#include <compare>

#include "base/id.hpp"

namespace repwright::domain {

using MovementId = base::Id<struct MovementTag>;
using EquipmentId = base::Id<struct EquipmentTag>;
using LimitId = base::Id<struct LimitTag>;
using PersonId = base::Id<struct PersonTag>;
using RouteId = base::Id<struct RouteTag>;

/// A line of work on a board, numbered from 0 in the order of reading.
struct StepId {
  int index = -1;
  auto operator<=>(const StepId&) const = default;
};
/// A block of a board, numbered from 0, a parent before its children.
struct BlockId {
  int index = -1;
  auto operator<=>(const BlockId&) const = default;
};

}  // namespace repwright::domain
