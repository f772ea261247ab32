#pragma once

#include <vector>

#include "rehearsal/cast.hpp"
#include "rehearsal/script.hpp"

namespace repwright::rehearsal {

/// What a lone person of middling luck makes of a piece.
struct LonePart {
  double score = 0;          // in the measure of the piece
  double seconds = 0;        // from the start signal until home
  double rounds = 0;         // full ones, and the share of the next where all rounds are alike
  double longest_lap_s = 0;  // 0: the piece has no intervals
  bool finished = true;      // before the cap, if there is one
};
/// [piece][person]. Nobody waits for a place, nobody has luck.
std::vector<std::vector<LonePart>> lone_pass(const FloorPlan& plan, const timetable::Timetable& timetable,
                                             const body::Constants& constants, const Cast& cast);

}  // namespace repwright::rehearsal
