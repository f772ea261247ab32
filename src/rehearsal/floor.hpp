#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "body/constants.hpp"
#include "rehearsal/agenda.hpp"
#include "rehearsal/places.hpp"
#include "rehearsal/player.hpp"
#include "rehearsal/recorder.hpp"
#include "rehearsal/script.hpp"
#include "timetable/timetable.hpp"

namespace repwright::rehearsal {

/// What one run adds to the plan: who the people are today and what luck they have.
struct RunSetting {
  std::vector<body::Body> bodies;            // day form included, but for the critical rate
  std::vector<double> critical_factor;       // day's factor on it, per person
  std::vector<double> judge;                 // per person: how big a rep must be to count
  std::vector<std::vector<double>> targets;  // s of activity that the reserve is spread over, [piece][person]
  std::vector<double> box_factor;            // per box of the timetable
  std::vector<std::optional<base::Stream>> luck;  // per person, of the single lines of work
  /// [piece of the timetable][person]: how much longer than the body tells a line takes whoever has done the
  /// piece before; empty or nothing: as the body tells, with its knack.
  std::vector<std::vector<std::optional<double>>> stretch{};

  std::optional<double> stretch_of(int piece, std::size_t person) const {
    return stretch.empty() ? std::nullopt : stretch[static_cast<std::size_t>(piece)][person];
  }
};

/// Whether people wait for places. Alone is how a lone person would find the floor.
enum class Crowd : std::uint8_t { Shared, Alone };

/// The rules of the floor that no board names: docs/decisions/floor.md.
inline constexpr double longest_piece = 4 * 3600;             // s; who is not home then never will be
inline constexpr double longest_free_rest = 300;              // s
inline constexpr double latest_reaction = 2;                  // s after the start signal, evenly spread
inline constexpr std::int64_t never = std::int64_t{1} << 34;  // ms

/// The nearest whole millisecond.
constexpr std::int64_t whole_ms(double seconds) {
  return base::sim_time(base::Duration::from_si(seconds)).ms;
}
constexpr double seconds_of(std::int64_t ms) {
  return static_cast<double>(ms) / 1000;
}

/// Plays one class, run by run, in its own memory. All times in whole milliseconds of the class.
class Floor {
 public:
  Floor(const FloorPlan& plan, const timetable::Timetable& timetable, const body::Constants& constants,
        Crowd crowd);

  /// Plays the class once. `recorder` may be null.
  void play(const RunSetting& setting, Recorder* recorder);

  /// Of the last run, [piece][person].
  const std::vector<std::vector<PieceResult>>& results() const { return results_; }
  struct BoxTimes {
    std::int64_t start = 0, end = 0;
  };
  /// Of the last run, per box of the timetable.
  std::span<const BoxTimes> boxes() const { return boxes_; }

 private:
  /// Whether a person goes on at once or waits for an event.
  enum class Flow : std::uint8_t { On, Parked };
  struct Pool {
    std::vector<double> fillings;
    std::vector<int> visits;   // finished, per member
    std::vector<int> waiting;  // people, in the order of coming
    int worker = -1;
    int last_worker = -1;
  };
  struct TeamState {
    std::vector<Pool> pools;
    std::size_t holder = 0;  // member whose turn it is
    int rounds = 0;
  };

  // The class (floor.cpp)
  void make_efforts(const RunSetting& setting);
  void wake_up(const RunSetting& setting);
  std::int64_t play_piece(int piece, std::int64_t start);
  std::int64_t play_heat(int heat, std::int64_t signal);
  void reset_teams(const ScriptedPiece& piece);
  void handle(const Event& event);
  bool over_for_others(const Player& player, std::int64_t at) const;
  void join(Player& player, std::int64_t at);
  void share_team_results();

  // One person's script (floor_script.cpp)
  void go_on(Player& player);
  Flow step(Player& player);
  Flow take_time(Player& player, const Op& op);
  Flow wait_until(Player& player, double clock);
  Flow script_rest(Player& player, double seconds);
  void control(Player& player, const Op& op);
  void end_lap(Player& player);
  void go_home(Player& player);
  Flow interrupt(Player& player);
  void bell(Player& player);
  static void skip_missed_calls(Player& player, const Duty& duty);
  void set_aside(Player& player, const std::vector<Op>& ops);
  bool idle(Player& player, std::int64_t ms);
  double ready_for_next(const Player& player) const;
  int rounds_of(const Player& player) const;
  static std::int64_t limit_of(const Player& player);

  // Work (floor_work.cpp)
  Flow work(Player& player, const Op& op);
  Flow begin_work(Player& player, const Op& op);
  Flow claim(Player& player);
  Flow get_ready(Player& player);
  Flow one_set(Player& player, const Op& op);
  Flow take_break(Player& player);
  Flow finish_work(Player& player);
  void take_up(Player& player, int task);
  double stretch_of(const Player& player) const;
  body::SetDone lift(Player& player, const body::SetPlan& plan);
  double units_to_failure(const Player& player) const;
  void account(Player& player, const body::SetDone& done, double oxygen_rate);
  bool rest_at_work(Player& player, double seconds);
  void close_stint(Player& player);
  void let_go(Player& player);
  static bool keeps_place(const Player& player);

  // Waiting and waking (floor_wait.cpp)
  void park(Player& player, EventKind kind);
  void wait_for(Player& player, Waiting what);
  void wake(Player& player, std::int64_t at);
  void on_claim(Player& player);
  void on_freed(int place, std::int64_t at);
  void on_bell(Player& player, std::int64_t at);
  void on_meet(Player& player);
  void on_home(const Player& player);
  bool all_met(const Player& player, int whom) const;
  void meet(const Player& player, int whom, std::int64_t at);

  // Teams (floor_team.cpp)
  void on_turn(Player& player);
  void pass_baton(int from, std::int64_t at);
  Flow ask_for_turn(Player& player);
  void pool_turn(Player& player);
  void pool_set(Player& player, Pool& pool);
  void free_pool(int team, int pool, std::int64_t at);
  double gate_limit(const Player& worker, const Pool& pool);
  void hold_gate(const Player& worker, const Pool& pool, double seconds);
  void hold_while_waiting(Player& player, int task, double seconds);
  void leave_team_queues(Player& player);
  Pool& pool_of(const Player& player);
  double& filling_of(const Player& player);
  double pool_chunk(const Player& player) const;

  const FloorPlan& plan_;
  const timetable::Timetable& timetable_;
  const body::Constants& constants_;
  bool crowded_ = true;

  Agenda agenda_;
  Places places_;
  std::vector<Player> players_;
  std::vector<TeamState> teams_;
  std::vector<std::vector<PieceResult>> results_;
  std::vector<BoxTimes> boxes_;
  std::vector<bool> played_;
  std::vector<body::Effort> efforts_;
  std::vector<std::vector<std::size_t>> first_effort_;  // [piece][person]
  const RunSetting* setting_ = nullptr;
  Recorder* recorder_ = nullptr;
  const ScriptedPiece* piece_ = nullptr;
  int piece_index_ = 0;
};

}  // namespace repwright::rehearsal
