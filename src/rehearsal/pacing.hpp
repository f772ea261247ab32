#pragma once

#include <array>
#include <vector>

#include "rehearsal/cast.hpp"
#include "rehearsal/floor.hpp"

/// How long each person expects to be at work: docs/decisions/pacing.md.
namespace repwright::rehearsal {

/// The activity that a person spreads their reserve over, and how it goes with their body.
struct Expectation {
  double seconds = 0;  // of the middle body
  // d ln seconds / d ln x for critical speed, largest sets, cadence and recovery
  std::array<double, 4> elasticity{};
};

/// [piece][person]. Comes from passes without luck in which nobody waits for a place.
using Expectations = std::vector<std::vector<Expectation>>;

Expectations expect(const FloorPlan& plan, const timetable::Timetable& timetable,
                    const body::Constants& constants, const Cast& cast);

/// Sets the targets of a run: each middle expectation, moved by how the run's body differs from the middle
/// one.
void set_targets(RunSetting& setting, const Expectations& expectations, const Cast& cast);

}  // namespace repwright::rehearsal
