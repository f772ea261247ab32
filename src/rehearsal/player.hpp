#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "body/dynamics.hpp"
#include "rehearsal/line_luck.hpp"
#include "rehearsal/script.hpp"

namespace repwright::rehearsal {

/// Where the time of a piece goes, by what would have to change to win it back. The names are those of
/// domain::Limiter, in its order; docs/decisions/limiter.md says what is counted where.
inline constexpr std::size_t limiter_count = 9;
using Losses = std::array<std::int64_t, limiter_count>;  // ms

/// One line of work as it was done: class milliseconds.
struct Stint {
  int op = 0;  // of the script; those of a penalty or duty follow behind `aside`
  int round = 0;
  int task = -1;
  std::int64_t start = 0, end = 0, work = 0, rest = 0, wait = 0;
  int sets = 0;
  double units = 0;
};

/// What the op numbers of penalties and duties begin with.
inline constexpr int aside = 1 << 16;

/// Units done that count, by kind.
struct Counts {
  double reps = 0, metres = 0, kcal = 0;
};

/// One person's piece in one run. `home` and `zero` are class milliseconds.
struct PieceResult {
  Counts counts;
  std::int64_t zero = 0, home = 0;
  std::int64_t active = 0;  // ms that are not a rest of the script: what the pacing spreads the reserve over
  int rounds = 0;
  int laps = 0, full_laps = 0;
  std::int64_t lap_sum = 0, lap_longest = 0;
  std::int64_t lap_shortest = std::numeric_limits<std::int64_t>::max();
  double lap_most = 0;
  double lap_least = std::numeric_limits<double>::infinity();
  bool capped = false;
  bool took_part = false;
  std::int64_t queued = 0;
  Losses losses{};
  double oxygen = 0;  // ml/kg, from the start signal (or the arrival) on
};

/// How far a person is with the op that they play.
enum class Stage : std::uint8_t { Begin, Claim, Ready, Set, Turn, Break };

/// A place in a list of ops, and how much of its op is left.
struct Cursor {
  const std::vector<Op>* ops = nullptr;
  int op = 0;
  Stage stage = Stage::Begin;
  bool resumed = false;  // `left` holds what an interruption left over
  double left = 0;
};

/// What somebody who is parked waits for.
enum class Waiting : std::uint8_t { Nothing, Place, Pool, Baton, Meet };

/// Where a person is in their script, and how they do what they are at. Set aside while a penalty or a duty
/// is played.
struct Doing {
  Cursor at;
  Stint stint;
  int task = -1;       // the own one or its alternative
  double stretch = 1;  // so much longer than usual this line takes: luck, and the person in this piece
  body::Effort effort;
};

/// A person on the floor. Between two events they are ahead of the class: `now` is their own instant.
struct Player {
  int person = 0;
  const Script* script = nullptr;
  const body::Body* body = nullptr;
  const body::Effort* efforts = nullptr;  // one per task of the script
  body::State state;
  body::Pacing pacing;
  std::optional<LineLuck> luck;  // none: noise off

  std::int64_t now = 0, zero = 0;
  std::int64_t deadline = 0;  // always finite: at last the limit of a piece
  int on_bell = -1;           // op to go on at; -1: home
  std::int64_t next_duty = 0;

  Doing doing;
  std::optional<Doing> outer;  // interrupted by a penalty or a duty
  std::optional<Cursor> cut;   // what the last deadline cut
  bool cut_work = false;       // a deadline cut work and none was begun since
  bool missed = false;         // in the present interval
  bool paid = false;           // the penalty of the present break
  bool home = true;
  Waiting waiting = Waiting::Nothing;
  std::uint32_t token = 0;

  int last_task = -1;  // worked before
  std::int64_t last_end = 0;
  int held = -1;  // place

  std::int64_t mark = 0;
  double mark_count = 0;
  PieceResult result;
};

}  // namespace repwright::rehearsal
