#pragma once

#include "body/dynamics.hpp"

namespace repwright::body {

/// `work` for runs and machines: no set breaks, only a pace.
SetDone work_engine(State& state, const Body& body, const Effort& effort, const SetPlan& plan,
                    const Constants& constants);

/// Units per second of a run or machine at that metabolic rate, ml/kg/min, with fresh legs.
double engine_speed(const Effort& effort, double rate, const Constants& constants);

}  // namespace repwright::body
