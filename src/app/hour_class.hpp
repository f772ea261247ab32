#pragma once

#include "app/rehearse_class.hpp"
#include "base/result.hpp"
#include "domain/hour_plan.hpp"

namespace repwright::app {

/// What to cut first, tried with those who come, and what happens to the kit between the pieces. `rehearsed`
/// is of the same request. Fails as a rehearsal does.
base::Result<domain::HourPlan> hour_class(const ClassRequest& request, const Gathered& gathered,
                                          const ClassRehearsal& rehearsed);

}  // namespace repwright::app
