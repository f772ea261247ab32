#pragma once

#include <limits>
#include <vector>

#include "body/dynamics.hpp"

/// One person alone on the floor: no places, no others, no noise. What a person paces themselves by, and the
/// way to ask the body model for the result of a simple piece.
namespace repwright::body {

/// So many units of one effort, then the change to the next.
struct Task {
  Effort effort;
  double amount = 0;  // units; infinite: until the bell
  double change = 0;  // s afterwards
};

/// `before` once, `round` as often as said or until the bell, `after` once.
struct Piece {
  std::vector<Task> before, round, after;
  double rounds = 1;                                      // infinite: until the bell
  double bell = std::numeric_limits<double>::infinity();  // s
};

struct AloneDone {
  double seconds = 0;              // at the end of the work, or the bell
  double units = 0;                // within the rounds
  double rounds = 0;               // whole ones, and the share of the units of the one begun
  std::vector<double> task_ends;   // s, of `before`, of each round in turn, of `after`
  std::vector<double> round_ends;  // s, the change to the next round included
  bool finished = false;
};

/// Works the piece with `pacing` from `state` on; stops at the bell, or unfinished at what cannot be done.
AloneDone alone(State& state, const Body& body, const Piece& piece, const Pacing& pacing,
                const Constants& constants);

/// The piece from fresh, paced towards its own end: the fixed point of that end, from `guess` seconds on.
AloneDone alone_at_best(const Body& body, const Piece& piece, double guess, const Constants& constants);

}  // namespace repwright::body
