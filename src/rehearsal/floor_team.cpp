#include <algorithm>
#include <cmath>

#include "rehearsal/floor.hpp"

/// People who share work: batons, pools, gates.
namespace repwright::rehearsal {

namespace {

constexpr double nothing = 1e-9;     // units
constexpr double endless = 1e9;      // units, seconds
constexpr double shortest_hold = 2;  // s; a gate that cannot be held for so long is rested for instead
constexpr double gate_pause = 5;     // s

const Task& task_of(const Player& player) {
  return player.script->tasks[static_cast<std::size_t>(player.doing.task)];
}

std::size_t member_of(const Team& team, int person) {
  return static_cast<std::size_t>(std::ranges::find(team.people, person) - team.people.begin());
}

}  // namespace

void Floor::on_turn(Player& player) {
  const Op& op = (*player.doing.at.ops)[static_cast<std::size_t>(player.doing.at.op)];
  if (op.kind == OpKind::Pool) return pool_turn(player);
  const auto team = static_cast<std::size_t>(player.script->team);
  if (piece_->teams[team].people[teams_[team].holder] != player.person)
    return wait_for(player, Waiting::Baton);
  ++player.token;
  ++player.doing.at.op;
  go_on(player);
}

/// Nothing if `from` has handed it on already: whoever passes and goes home at once does both.
void Floor::pass_baton(int from, std::int64_t at) {
  const auto team = static_cast<std::size_t>(players_[static_cast<std::size_t>(from)].script->team);
  TeamState& state = teams_[team];
  const Team& who = piece_->teams[team];
  if (who.people[state.holder] != from) return;
  for (std::size_t tried = 0; tried < who.people.size(); ++tried) {
    state.holder = (state.holder + 1) % who.people.size();
    Player& next = players_[static_cast<std::size_t>(who.people[state.holder])];
    if (next.home) continue;
    const std::int64_t handed = at + whole_ms(who.hand_over);
    if (next.waiting != Waiting::Baton || handed >= limit_of(next)) return;
    wake(next, handed);
    ++next.doing.at.op;
    return go_on(next);
  }
}

Floor::Pool& Floor::pool_of(const Player& player) {
  const Op& op = (*player.doing.at.ops)[static_cast<std::size_t>(player.doing.at.op)];
  return teams_[static_cast<std::size_t>(player.script->team)].pools[static_cast<std::size_t>(op.pool)];
}

/// What is left of the filling that this person works on.
double& Floor::filling_of(const Player& player) {
  const Op& op = (*player.doing.at.ops)[static_cast<std::size_t>(player.doing.at.op)];
  const Team& team = piece_->teams[static_cast<std::size_t>(player.script->team)];
  Pool& pool = pool_of(player);
  const auto visit = static_cast<std::size_t>(pool.visits[member_of(team, player.person)]);
  while (pool.fillings.size() <= visit)
    pool.fillings.push_back(team.pools[static_cast<std::size_t>(op.pool)]);
  return pool.fillings[visit];
}

Floor::Flow Floor::ask_for_turn(Player& player) {
  if (player.now >= limit_of(player)) return interrupt(player);
  park(player, EventKind::Turn);
  return Flow::Parked;
}

void Floor::pool_turn(Player& player) {
  const Op& op = (*player.doing.at.ops)[static_cast<std::size_t>(player.doing.at.op)];
  const Team& team = piece_->teams[static_cast<std::size_t>(player.script->team)];
  Pool& pool = pool_of(player);
  if (filling_of(player) <= nothing) {
    ++pool.visits[member_of(team, player.person)];
    finish_work(player);
  } else if (team.one_works[static_cast<std::size_t>(op.pool)] && pool.worker >= 0) {
    pool.waiting.push_back(player.person);
    return wait_for(player, Waiting::Pool);
  } else {
    pool_set(player, pool);
  }
  go_on(player);
}

/// One set on the pool. What it takes is taken when it begins, so that two never do the same rep.
void Floor::pool_set(Player& player, Pool& pool) {
  const Op& op = (*player.doing.at.ops)[static_cast<std::size_t>(player.doing.at.op)];
  const Team& team = piece_->teams[static_cast<std::size_t>(player.script->team)];
  const bool alone = team.one_works[static_cast<std::size_t>(op.pool)];
  const double factor = task_of(player).score_factor;
  double& left = filling_of(player);
  player.doing.at.left = left * factor;
  const double rest =
      pool.last_worker == player.person
          ? body::break_for(player.state, *player.body, player.doing.effort, player.doing.at.left, constants_)
          : body::ready_in(player.state, *player.body, player.doing.effort, player.doing.at.left, constants_);
  bool on = rest <= 0 || rest_at_work(player, rest);
  const double held = alone && on ? gate_limit(player, pool) : endless;
  if (on && held < shortest_hold) {
    on = rest_at_work(player, gate_pause);
  } else if (on) {
    const std::int64_t limit = limit_of(player);
    const double bell = seconds_of(limit - player.now);
    const double wanted = std::min(player.doing.at.left, pool_chunk(player));
    const body::SetDone done = lift(player, {.wanted = wanted, .seconds = std::min(bell, held)});
    left = std::max(0.0, left - done.units / factor);
    if (alone) hold_gate(player, pool, done.seconds);
    player.now = std::min(limit, player.now + whole_ms(done.seconds));
    on = player.now < limit;
  }
  if (alone) {
    pool.worker = player.person;
    pool.last_worker = player.person;
    agenda_.post({{player.now},
                  Phase::Release,
                  EventKind::PoolFree,
                  player.script->team,
                  static_cast<std::uint32_t>(op.pool)});
  }
  player.doing.at.stage = alone || left <= nothing ? Stage::Turn : Stage::Break;
  if (!on) interrupt(player);
}

/// Units of one go at a pool: the planned set, or what a fair share of four goes each would be on a machine.
double Floor::pool_chunk(const Player& player) const {
  const Task& task = task_of(player);
  if (task.planned_set > 0) return task.planned_set;
  if (std::isfinite(player.doing.effort.best)) return endless;
  const Op& op = (*player.doing.at.ops)[static_cast<std::size_t>(player.doing.at.op)];
  const Team& team = piece_->teams[static_cast<std::size_t>(player.script->team)];
  const double share =
      team.pools[static_cast<std::size_t>(op.pool)] / static_cast<double>(4 * team.people.size());
  return std::max(1.0, std::ceil(share * task.score_factor));
}

/// The worker of a pool has set down: the next one takes over, those whose filling is empty go on.
void Floor::free_pool(int team, int pool, std::int64_t at) {
  Pool& state = teams_[static_cast<std::size_t>(team)].pools[static_cast<std::size_t>(pool)];
  state.worker = -1;
  const std::int64_t handed = at + whole_ms(piece_->teams[static_cast<std::size_t>(team)].hand_over);
  const std::vector<int> waiting = state.waiting;
  state.waiting.clear();
  for (const int person : waiting) {
    Player& next = players_[static_cast<std::size_t>(person)];
    const bool empty = filling_of(next) <= nothing;
    if (empty) {
      wake(next, at);
      pool_turn(next);
    } else if (state.worker >= 0 || handed >= limit_of(next)) {
      state.waiting.push_back(person);
    } else {
      wake(next, handed);
      pool_set(next, state);
      go_on(next);
    }
  }
}

/// Seconds for which all who wait can hold what the gate asks; endless if it asks nothing.
double Floor::gate_limit(const Player& worker, const Pool& pool) {
  double longest = endless;
  for (const int person : pool.waiting) {
    Player& other = players_[static_cast<std::size_t>(person)];
    const int gate = task_of(other).gate;
    if (gate < 0) continue;
    if (worker.now > other.now) {
      body::rest(other.state, *other.body, seconds_of(worker.now - other.now), constants_);
      other.now = worker.now;
    }
    body::State probe = other.state;
    const body::SetDone held = body::work(probe, *other.body, other.efforts[gate],
                                          {.wanted = endless, .pacing = other.pacing}, constants_);
    longest = std::min(longest, held.seconds);
  }
  return longest;
}

void Floor::hold_gate(const Player& worker, const Pool& pool, double seconds) {
  for (const int person : pool.waiting) {
    Player& other = players_[static_cast<std::size_t>(person)];
    const int gate = task_of(other).gate;
    if (gate < 0 || other.now > worker.now) continue;
    body::work(other.state, *other.body, other.efforts[gate],
               {.wanted = endless, .seconds = seconds, .pacing = other.pacing}, constants_);
    other.doing.stint.work += whole_ms(seconds);
    other.now = worker.now + whole_ms(seconds);
  }
}

/// Holds as well as they can until the baton comes: hold, rest, hold again.
void Floor::hold_while_waiting(Player& player, int task, double seconds) {
  const body::Effort& effort = player.efforts[task];
  while (seconds > 0) {
    const body::SetDone held =
        body::work(player.state, *player.body, effort,
                   {.wanted = endless, .seconds = seconds, .pacing = player.pacing}, constants_);
    player.result.oxygen += effort.cost * held.units + constants_.standing_rate / 60 * held.seconds;
    seconds -= held.seconds;
    if (seconds <= 0) return;
    const double rest =
        std::min(seconds, body::break_for(player.state, *player.body, effort, endless, constants_));
    body::rest(player.state, *player.body, rest, constants_);
    seconds -= rest;
  }
}

void Floor::leave_team_queues(Player& player) {
  std::erase(pool_of(player).waiting, player.person);
}

}  // namespace repwright::rehearsal
