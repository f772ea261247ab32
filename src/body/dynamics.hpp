#pragma once

#include "body/body.hpp"
#include "body/constants.hpp"

/// The closed forms between two events. Nothing here polls or steps: each call moves the state over one whole
/// set, rest or run. Same formulas as the per-rep description in docs/models/body.md within its stated error.
namespace repwright::body {

/// What the person aims at: the end that they pace themselves towards, on the state's clock.
struct Pacing {
  double end = 1e9;  // s; the reserve is spread evenly until then
};

/// A fresh, warmed-up body on a day whose form multiplies the critical rate.
State fresh(const Body& body, double day_factor, const Constants& constants);

struct SetPlan {
  double wanted = 0;        // units left of this work
  double seconds = 1e18;    // until the bell: a unit counts if it ends before it
  bool to_failure = false;  // no reserve kept
};
struct SetDone {
  double units = 0;
  double seconds = 0;
  bool bell = false;  // stopped by the bell
};

/// Works one unbroken set of `effort`: until done, the bell, or the person's stop rule; moves the state.
SetDone work(State& state, const Body& body, const Effort& effort, const SetPlan& plan, const Pacing& pacing,
             const Constants& constants);

/// Rests (or queues, or walks to the next station) for so many seconds.
void rest(State& state, const Body& body, double seconds, const Constants& constants);

/// Seconds of rest until the person takes up `left` units of `effort` again (0: at once; infinite: never).
double ready_in(const State& state, const Body& body, const Effort& effort, double left,
                const Constants& constants);

}  // namespace repwright::body
