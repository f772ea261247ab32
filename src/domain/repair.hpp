#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "domain/board.hpp"
#include "domain/target.hpp"

/// Small changes of a board and what each would do to the class.
namespace repwright::domain {

enum class RepairKind : std::uint8_t {
  OddStart,
  Swap,
  Stagger,
  SecondStation,
  FewerReps,
  ShorterRun,
  FewerRounds,
  MoreRounds,
  LessOfEach,      // of every line of a piece
  LongerInterval,  // and fewer of them
  Cap,
  Heats,
  CutList  // what to cut first, in its order, until the class fits
};

/// What a rehearsal says of the whole class, in the few figures by which two versions of a board compare.
struct Consequences {
  double wait_s = 0;      // mean wait at places, per person
  double finished = 1;    // share of people and runs inside the caps
  double over_share = 0;  // of runs in which the class runs over
  double end_p50_s = 0;   // of the class
  double end_p90_s = 0;
  double over_s = 0;           // by how much the slow tenth of classes runs over; 0: fits, or no end is set
  double median_finish_s = 0;  // median over people of their time in timed pieces; 0: none is timed
  double work_s = 0;           // mean work per person
  double wanted_s = 0;         // of that what the intents leave room for: no work beyond an intended end
  std::optional<double> off_intent =
      {};  // share of people and pieces with an intent whose middle run misses it
  bool operator==(const Consequences&) const = default;
};

/// One change of a board. `words` is what to tell the class, `change` how big it is beside an odd start (1).
struct Edit {
  RepairKind kind = RepairKind::OddStart;
  BlockId block;
  std::vector<StepId> steps;  // the lines that it touches; empty: the block as a whole
  std::string words;
  double change = 1;
  Board board;                  // after it
  std::string text;             // the whole board text with it; empty: not chalked yet
  std::vector<int> lines = {};  // of `text` that are others now; none where some were only taken away
  bool rewritten = false;       // `text` is written anew, not in the coach's own lines
  bool operator==(const Edit&) const = default;
};

/// A change that helps: `gain` in minutes of the class's burden, see docs/decisions/repairs.md.
struct Repair {
  Edit edit;
  Consequences after;
  double gain = 0;
  bool operator==(const Repair&) const = default;
};

/// At most three repairs, the most gain per change first, beside doing nothing.
struct RepairPlan {
  Consequences before;
  int tried = 0;         // changes rehearsed
  int runs = 0;          // of each that came into the last round
  bool stopped = false;  // somebody did not wait for the end: the best so far
  std::vector<Repair> best;
  std::vector<std::string> notes = {};    // what to know of the hall first
  std::vector<PieceTarget> targets = {};  // what to write beside each piece
  bool operator==(const RepairPlan&) const = default;
};

}  // namespace repwright::domain
