#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "body/effort.hpp"
#include "domain/fitted.hpp"
#include "domain/rehearsal.hpp"
#include "timetable/timetable.hpp"

/// A person's script for one piece: what the floor plays. It knows nothing of text, levels or tiers any more.
namespace repwright::rehearsal {

/// The words of a script. Times are seconds of the piece's clock (from the person's own start signal where
/// the start is staggered); indices point into the script or its tables. Running out of ops is an End.
enum class OpKind : std::uint8_t {
  Work,       // `amount` of task `task`; infinity: until the deadline
  MaxSet,     // one unbroken set of task `task`, ended `amount` units short of failure
  Pool,       // task `task` on the team's pool `pool` until that filling is empty; see Team
  Rest,       // rest `amount` seconds
  RestRatio,  // rest `amount` times what passed since the last Mark
  RestReady,  // rest until the next Work's first set is ready again
  WaitUntil,  // until clock time `amount`
  Deadline,   // from here on work ends at clock time `amount`; then go on at `target` (a miss is noted)
  NoDeadline,
  Resume,     // go on where the last deadline cut (carry-over)
  Mark,       // an interval begins
  Lap,        // the interval ends: its time and its count are kept
  RoundDone,  // one full round is counted, for the team if there is one; a trace's round is their number
  Jump,       // to `target`
  TakeBaton,  // wait for the team's turn, holding task `task` meanwhile (-1: at rest)
  PassBaton,  // to the next of the team; one who has played to the end is passed over
  Meet,       // wait for everybody of the team (`pool` -1) or of the class heat (`pool` -2) still playing
  End
};
struct Op {
  OpKind kind = OpKind::End;
  double amount = 0;
  int task = -1;
  int target = -1;
  int pool = -1;
};

/// One way of working, shared by all the ops that use it. `place` indexes FloorPlan::places, -1: own spot.
struct Task {
  domain::StepId step;
  domain::MovementId movement;
  body::EffortSpec effort;
  domain::Unit unit = domain::Unit::Reps;
  int place = -1;
  int alternative = -1;     // task to do instead when its place is free and the own one is not
  int gate = -1;            // task held while another of the team works on the pool, -1: at rest
  bool counted = true;      // adds to reps, metres or kcal of the score
  double score_factor = 1;  // 3 singles count one
  bool outdoors = false;    // a run by a route: passes the door, back-times are kept
  double door = 0;          // s, out and again in
  double turn_cost = 0;     // s per unit on top of the effort: the turns of a shuttle
  double set_up = 0;        // s beyond the person's own transition: straps, a band
  double held_pace = 0;     // s per unit, held back to: tempo, race pace; 0: as fast as lasts
  int planned_set = 0;      // units before a planned break; 0: as the body decides
};

/// An every-so-often duty inside the piece; its ops are Work only.
struct Duty {
  double every = 0, first = 0;
  std::vector<Op> ops;
};

struct Script {
  std::vector<Op> ops;
  std::vector<Task> tasks;
  std::vector<Op> penalty;  // Work, played at each break of a set
  std::optional<Duty> duty;
  domain::Score score = domain::Score::None;
  double start = 0;  // s after the piece's (heat's) start signal
  int heat = 0;
  int team = -1;         // index into ScriptedPiece::teams
  int step_rounds = 1;   // RoundDone ops of one play-through; 0: a loop until the deadline
  double load_best = 0;  // kg: what a scored load is taken from (estimated best), for load scores
};

/// People who share work. Who comes to a pool for the k-th time works on its k-th filling, so a loop needs no
/// refilling; units count after the task's `score_factor`.
struct Team {
  std::vector<int> people;
  std::vector<double> pools;    // units of one filling
  std::vector<bool> one_works;  // per pool: only the baton's holder works, and hands it over at each break
  double hand_over = 3;         // s
};

struct ScriptedPiece {
  int piece = 0;                // index into Timetable::pieces
  std::vector<Script> scripts;  // per person, in the order of the people
  std::vector<Team> teams;
  int heats = 1;           // at least the timetable's; more if lanes are few
  double heat_change = 0;  // s between two heats
  bool keep_place_while_resting = true;
};

/// Places that are queued for; `equipment` is the id of a kind of equipment, or of a route that takes only so
/// many runners.
struct FloorPlace {
  domain::EquipmentId equipment;
  int count = 0;  // people at once, at least one
};

/// All that one class needs to be played: no text, no files, no marks.
struct FloorPlan {
  std::vector<ScriptedPiece> pieces;
  std::vector<FloorPlace> places;
  std::vector<double> late;  // s after the start of the class, per person
};

}  // namespace repwright::rehearsal
