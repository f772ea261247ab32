#pragma once

#include "body/dynamics.hpp"

namespace repwright::body {

/// `work` for runs and machines: no set breaks, only a pace.
SetDone work_engine(State& state, const Body& body, const Effort& effort, const SetPlan& plan,
                    const Constants& constants);

/// Units per second of a run or machine at that metabolic rate, ml/kg/min, with fresh legs.
double engine_speed(const Effort& effort, double rate, const Constants& constants);

/// The metabolic rate that a run or machine is paced at, before its mode. The spread of the reserve grows by
/// D' / (v_max - CS): with it an even run is the three-parameter hyperbola (Morton 1996), which keeps 400 m
/// from being absurdly fast.
double engine_rate(const State& state, const Body& body, const Pacing& pacing, const Constants& constants);

}  // namespace repwright::body
