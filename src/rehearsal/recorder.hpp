#pragma once

#include <cstdint>

#include "rehearsal/player.hpp"

namespace repwright::rehearsal {

/// Who did it in which piece.
struct Part {
  int person = 0;
  int piece = 0;  // index into FloorPlan::pieces
};

/// Is told what happens on the floor, as it happens. Times are class milliseconds.
class Recorder {
 public:
  Recorder() = default;
  Recorder(const Recorder&) = delete;
  Recorder& operator=(const Recorder&) = delete;
  virtual ~Recorder() = default;

  /// A line of work of that person is over, or was cut.
  virtual void worked(Part part, const Stint& stint, const Player& player) = 0;
  /// Somebody stood in the queue of a place, and got it or was called away by the clock.
  virtual void queued(int place, int person, std::int64_t from, std::int64_t to) = 0;
  /// So many stand in the queue of that place now.
  virtual void queue_length(int place, int waiting) = 0;
  /// The interval number `lap` (from 0) took so many milliseconds.
  virtual void lap(Part part, int lap, std::int64_t ms) = 0;
};

}  // namespace repwright::rehearsal
