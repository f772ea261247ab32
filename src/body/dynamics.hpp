#pragma once

#include "body/body.hpp"
#include "body/constants.hpp"

/// The closed forms between two events. Nothing here polls or steps: each call moves the state over one whole
/// set, rest or run. Same formulas as the per-rep description in docs/models/body.md within its stated error.
namespace repwright::body {

/// What the person aims at: the end that they pace themselves towards, on the state's clock.
struct Pacing {
  double end = 1e9;    // s; the reserve is spread evenly until then
  double settled = 0;  // seconds per unit: 0 brisk, 1 sustained, below 0 faster than brisk; see `pace_for`
};

/// The pacing towards `end` on the state's clock of work that takes `length` seconds in all: up to four
/// minutes brisk or faster, longer ones towards the sustained pace (trade: common practice, no source).
Pacing pace_for(double end, double length);

/// A fresh, warmed-up body on a day whose form multiplies the critical rate (heat included, `heat_factor`).
State fresh(const Body& body, double day_factor, const Constants& constants);

/// What heat leaves of the critical rate: 1 up to 15 C of wet-bulb globe temperature, then 0.35 % less per
/// degree (Mantzios et al. 2022, Med Sci Sports Exerc, doi 10.1249/MSS.0000000000002769).
double heat_factor(double wet_bulb_globe_celsius);

struct SetPlan {
  double wanted = 0;        // units left of this work
  double seconds = 1e18;    // until the bell: a unit counts if it ends before it
  bool to_failure = false;  // no reserve kept
  Pacing pacing{};
};
struct SetDone {
  double units = 0;
  double seconds = 0;  // up to the bell if it rang, the unfinished unit included
  bool bell = false;   // stopped by the bell
};

/// Works one unbroken set of `effort`: until done, the bell, or the person's stop rule; moves the state.
SetDone work(State& state, const Body& body, const Effort& effort, const SetPlan& plan,
             const Constants& constants);

/// Rests (or queues, or walks to the next station) for so many seconds.
void rest(State& state, const Body& body, double seconds, const Constants& constants);

/// Seconds of rest until the person takes up `left` units of `effort` again (0: at once; infinite: never).
double ready_in(const State& state, const Body& body, const Effort& effort, double left,
                const Constants& constants);

/// The same after a set of one's own has stopped short: never less than the shortest break.
double break_for(const State& state, const Body& body, const Effort& effort, double left,
                 const Constants& constants);

/// Units that the person could do now if nothing but the own group ended the set; below one: none.
double available(const State& state, const Effort& effort, const Constants& constants);

/// The metabolic rate that spreads the reserve evenly until `pacing.end`, ml/kg/min.
double target_rate(const State& state, const Pacing& pacing, const Constants& constants);

}  // namespace repwright::body
