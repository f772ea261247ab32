#pragma once

#include <cstdint>
#include <vector>

#include "rehearsal/scoring.hpp"
#include "rehearsal/tally.hpp"

namespace repwright::rehearsal {

/// What is kept of every single run: one row per run, filled by whoever plays it.
struct RunTable {
  RunTable(const FloorPlan& plan, const timetable::Timetable& timetable, int run_count)
      : runs(static_cast<std::size_t>(run_count)),
        people(plan.late.size()),
        pieces(plan.pieces.size()),
        places(plan.places.size()),
        boxes(timetable.boxes.size()),
        scores(runs * people * pieces),
        waits(runs * people * places),
        box_ends(runs * boxes),
        vo2max(runs * people) {}

  std::size_t runs, people, pieces, places, boxes;
  std::vector<Scored> scores;          // [piece][person][run]
  std::vector<std::int32_t> waits;     // ms, [place][person][run]
  std::vector<std::int64_t> box_ends;  // ms, [box][run]
  std::vector<float> vo2max;           // [person][run]

  Scored& score(std::size_t piece, std::size_t person, std::size_t run) {
    return scores[(piece * people + person) * runs + run];
  }
  const Scored& score(std::size_t piece, std::size_t person, std::size_t run) const {
    return scores[(piece * people + person) * runs + run];
  }
  std::int32_t& wait(std::size_t place, std::size_t person, std::size_t run) {
    return waits[(place * people + person) * runs + run];
  }
  std::int32_t wait(std::size_t place, std::size_t person, std::size_t run) const {
    return waits[(place * people + person) * runs + run];
  }
};

}  // namespace repwright::rehearsal
