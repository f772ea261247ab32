#pragma once

#include "domain/rehearsal.hpp"
#include "rehearsal/player.hpp"

namespace repwright::rehearsal {

/// One person's piece in one run, in the measure that is scored.
struct Scored {
  double score = 0;
  double reps = 0;  // done in all, for reps at the cap
  int rounds = 0;
  bool capped = false;
  bool took_part = false;
};

/// What the piece's score is counted in; `open`: the people decide how long it lasts.
domain::Measure measure_of(const Script& script, bool open);

/// Counted units of one round of a script that goes on in rounds until the clock ends it; 0 where there is no
/// such loop, or its rounds are not alike.
double reps_per_round(const Script& script);

/// The score of a result; docs/decisions/scores.md says how each kind is counted.
Scored score_of(const Script& script, const PieceResult& result, domain::Measure measure);

}  // namespace repwright::rehearsal
