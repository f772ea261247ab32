#pragma once

#include <functional>
#include <string_view>

#include "app/gym_at_hand.hpp"
#include "app/rehearse_class.hpp"
#include "domain/repair.hpp"

namespace repwright::app {

/// The small changes of the board that would help this class most, at most three, each rehearsed with the
/// same people and the same luck; `text` is what `request.reading` was read from. Nothing helps a class that
/// fits and does not queue: then there are none. `progress` is told after every trial, from any thread; once
/// the request's stop is asked for, the best so far. Fails as `rehearse_class` does.
base::Result<domain::RepairPlan> repair_class(const ClassRequest& request, std::string_view text,
                                              const std::function<void(int done, int of)>& progress = {});

/// The same for one class of the gym under a 'what if'. Fails as `rehearse_what_if` does.
base::Result<domain::RepairPlan> repair_what_if(const GymAtHand& at_hand, const board::Reading& reading,
                                                std::string_view text, const WhatIf& what);

}  // namespace repwright::app
