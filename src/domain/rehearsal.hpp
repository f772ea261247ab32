#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "domain/ids.hpp"

/// What a rehearsal found: plain numbers in the units that their names say.
namespace repwright::domain {

enum class Measure : std::uint8_t { Seconds, Reps, Kilograms, Metres, Kilocalories };
enum class Limiter : std::uint8_t { Push, Pull, Legs, Core, Grip, Pace, Engine, Queue, Clock };

/// Mean, spread and the 10, 50 and 90 % points over the runs.
struct Spread {
  double mean = 0, sd = 0, p10 = 0, p50 = 0, p90 = 0;
  bool operator==(const Spread&) const = default;
};

/// One line of work in one round, means over the runs, seconds from the start of the piece.
struct StepTrace {
  int round = 0;
  StepId step;
  int line = 0;  // of the board text, filled in where the text is known; 0: not known
  MovementId version;
  std::optional<double> load_kg;
  double start_s = 0, end_s = 0, work_s = 0, rest_s = 0, wait_s = 0, sets = 0;
  double amount = 0;
  double share_of_runs = 1;  // how many runs got this far
  bool operator==(const StepTrace&) const = default;
};

struct PieceOutcome {
  int piece = 0;
  Measure measure = Measure::Seconds;
  Spread score;
  double sd_day = 0;                  // one person repeating it on other days
  std::optional<Spread> rounds;       // full ones
  double reps_per_round = 0;          // of one full round as this person does it; 0: rounds are not alike
  double capped = 0;                  // share of runs
  std::optional<Spread> reps_at_cap;  // of the capped runs
  std::vector<double> interval_s;     // mean per interval
  double demand_share = 0;            // mean share of VO2max
  Limiter limiter = Limiter::Pace;
  double wait_s = 0;
  std::vector<StepTrace> steps;
  bool operator==(const PieceOutcome&) const = default;
};

struct PersonOutcome {
  PersonId person;
  std::string name;
  std::vector<PieceOutcome> pieces;
  bool operator==(const PersonOutcome&) const = default;
};

/// `queue` holds (seconds of the class, mean number waiting).
struct PlaceUse {
  EquipmentId place;   // or the id of a route
  std::string name{};  // as people say it; empty: not known
  int count = 0;
  double wait_mean_s = 0, wait_p90_s = 0;  // of a person, over all visits of the class
  double queue_max_mean = 0;
  std::vector<std::pair<double, double>> queue;
  bool operator==(const PlaceUse&) const = default;
};

struct BoxOutcome {
  std::string name;
  std::string kind;
  std::optional<int> piece;  // index of the piece that runs in it
  std::optional<double> planned_s;
  double start_p50_s = 0, end_p50_s = 0, end_p90_s = 0;
  bool operator==(const BoxOutcome&) const = default;
};
struct ClassOutcome {
  std::optional<double> planned_s;
  double p50_s = 0, p90_s = 0;
  double over_share = 0;
  std::vector<BoxOutcome> boxes;
  bool operator==(const ClassOutcome&) const = default;
};

enum class FindingKind : std::uint8_t {
  Queue,
  NobodyFinishes,
  NoFullRound,
  OverCap,
  OverClass,
  LastRunnerLate,
  LimitSwapped,
  KitShort,
  RouteClosed,
  HallTooFull,
  MuchMoreThanLately,
  FreeText,
  MissesIntent,
  UnevenHeats,
  TooFewForATeam
};
enum class FindingSeverity : std::uint8_t { Note, Warning, Problem };
struct Finding {
  FindingKind kind = FindingKind::Queue;
  FindingSeverity severity = FindingSeverity::Note;
  std::string text;
  std::optional<StepId> step;
  int line = 0;  // as in StepTrace
  std::vector<PersonId> people;
  bool operator==(const Finding&) const = default;
};

/// One person's piece in one run.
struct Draw {
  int person = 0, piece = 0, run = 0;
  double score = 0;
  double vo2max = 0;
  std::vector<double> step_ends_s;
  bool operator==(const Draw&) const = default;
};

/// When a person is back from a run: seconds of the piece.
struct RunnerBack {
  int piece = 0;
  int round = 0;
  StepId step;
  PersonId person;
  Spread back_s;
  bool operator==(const RunnerBack&) const = default;
};

struct Rehearsal {
  std::uint64_t seed = 0;
  int runs = 0;
  std::vector<std::string> notes;
  std::vector<std::string> piece_names;
  std::vector<PersonOutcome> people;
  std::vector<RunnerBack> runners;
  std::vector<PlaceUse> places;
  ClassOutcome timetable;
  std::vector<Finding> findings;
  std::vector<Draw> draws;  // only on demand
  bool operator==(const Rehearsal&) const = default;
};

}  // namespace repwright::domain
