#pragma once

#include <string>
#include <vector>

#include "rehearsal/rehearse.hpp"

/// Ready-made floors for tests and benchmarks. All people and pieces are invented.
namespace repwright::test {

/// What `rehearse` needs, kept together.
struct Stage {
  rehearsal::FloorPlan plan;
  timetable::Timetable timetable;
  body::Constants constants;
  rehearsal::Cast cast;

  rehearsal::RehearsalRequest request(int runs, std::uint64_t seed = 1) const;
};

/// Units of a mixed class: `rounds` rounds of `steps` lines each, or as many rounds as fit into `seconds`.
struct MixedPiece {
  int people = 24;
  int steps = 4;  // lines of a round
  double seconds = 24 * 60;
  int bars = 8;  // places for the pull-ups; 0: as many as people
};

/// Everybody for themselves through pull-ups, push-ups, squats, sit-ups (and so on round) until the bell:
/// about 800 reps each in 24 minutes. Bodies differ from person to person and from run to run.
Stage mixed_class(const MixedPiece& piece);

/// The effort of a plain movement whose largest set is that of its group's reference movement times `share`.
body::EffortSpec reps_spec(body::Group group, double seconds, double cost, double share);
/// A hold: exactly as many seconds as asked for, by anybody.
body::EffortSpec hold_spec();
body::EffortSpec run_spec();

}  // namespace repwright::test
