#pragma once

#include <optional>
#include <vector>

#include "app/rehearse_class.hpp"
#include "domain/solver.hpp"
#include "domain/warm_up_plan.hpp"

namespace repwright::app {

/// What the coach says of the warm-up that the board does not.
struct WarmUpWishes {
  std::optional<base::Duration> length;         // empty: what the board gives it, else ten minutes
  std::vector<domain::EquipmentId> also_out{};  // kit that stands there though the board does not use it
};

/// The warm-up for what is on the board: for the room with the kit that is out and the people who come, for
/// whoever comes late, and without any kit. Nobody needs to be named. Fails with Invalid when the board has
/// no work that a warm-up could prepare, with NotFound as `who_comes`, with Stopped.
base::Result<domain::WarmUpPlan> warm_up_class(const ClassRequest& request, const WarmUpWishes& wishes,
                                               domain::Solver& solver);

}  // namespace repwright::app
