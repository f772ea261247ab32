#pragma once

#include <vector>

#include "rehearsal/cast.hpp"
#include "rehearsal/script.hpp"

namespace repwright::rehearsal {

/// What somebody did at one kind of place over a whole piece.
struct AtPlace {
  domain::EquipmentId place;  // or the id of a route
  int lines = 0;              // lines of work there, round by round
  double waited_s = 0;
};

/// What a person of middling luck makes of a piece.
struct MiddlingPart {
  double score = 0;          // in the measure of the piece
  double seconds = 0;        // from the start signal until home
  double rounds = 0;         // full ones, and the share of the next where all rounds are alike
  double longest_lap_s = 0;  // 0: the piece has no intervals
  int laps = 0;
  bool finished = true;  // before the cap, if there is one
  double active_s = 0;   // without the rests of the script
  std::vector<AtPlace> places = {};
};
/// [piece][person].
using MiddlingParts = std::vector<std::vector<MiddlingPart>>;

/// Nobody waits for a place, nobody has luck.
MiddlingParts lone_pass(const FloorPlan& plan, const timetable::Timetable& timetable,
                        const body::Constants& constants, const Cast& cast);

/// Everybody on one floor, nobody has luck: who finds a place taken waits. `paces` is what everybody is at
/// work alone (`active_s`), [piece][person].
MiddlingParts crowd_pass(const FloorPlan& plan, const timetable::Timetable& timetable,
                         const body::Constants& constants, const Cast& cast,
                         const std::vector<std::vector<double>>& paces);

}  // namespace repwright::rehearsal
