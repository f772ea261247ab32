#include <algorithm>

#include "rehearsal/floor.hpp"

/// Waiting and waking: places, meets, and the bell that calls those who wait.
namespace repwright::rehearsal {

namespace {

constexpr int the_heat = -2;  // whom a Meet waits for
constexpr int the_team = -1;

}  // namespace

/// Stops the person until the event that asks on their behalf, at their own instant.
void Floor::park(Player& player, EventKind kind) {
  ++player.token;
  agenda_.post({{player.now}, Phase::Claim, kind, player.person, player.token});
}

/// From now on the person waits; the clock will call them if nobody else does.
void Floor::wait_for(Player& player, Waiting what) {
  player.waiting = what;
  ++player.token;
  agenda_.post({{limit_of(player)}, Phase::Finish, EventKind::Bell, player.person, player.token});
}

/// The wait is over at `at`. Waiting is rest; for others of the team it is no activity either.
void Floor::wake(Player& player, std::int64_t at) {
  const std::int64_t waited = std::max(std::int64_t{0}, at - player.now);
  if (player.waiting == Waiting::Place) {
    const int place = player.script->tasks[static_cast<std::size_t>(player.doing.task)].place;
    player.doing.stint.wait += waited;
    player.result.queued += waited;
    player.result.losses[static_cast<std::size_t>(domain::Limiter::Queue)] += waited;
    if (recorder_) {
      recorder_->queued(place, player.person, player.now, at);
      recorder_->queue_length(place, places_.waiting(place));
    }
  } else {
    player.pacing.end += seconds_of(waited);
    player.result.active -= waited;
  }
  const Op& op = (*player.doing.at.ops)[static_cast<std::size_t>(player.doing.at.op)];
  if (player.waiting == Waiting::Baton && op.task >= 0) {
    hold_while_waiting(player, op.task, seconds_of(waited));
  } else if (waited > 0) {
    body::rest(player.state, *player.body, seconds_of(waited), constants_);
    player.result.oxygen += constants_.standing_rate / 60 * seconds_of(waited);
  }
  player.now = std::max(player.now, at);
  player.waiting = Waiting::Nothing;
  ++player.token;
}

void Floor::on_claim(Player& player) {
  const auto& tasks = player.script->tasks;
  const int other = tasks[static_cast<std::size_t>(player.doing.task)].alternative;
  if (other >= 0 && !places_.free(tasks[static_cast<std::size_t>(player.doing.task)].place)) {
    const int instead = tasks[static_cast<std::size_t>(other)].place;
    if (instead < 0 || places_.free(instead)) take_up(player, other);
  }
  const int place = tasks[static_cast<std::size_t>(player.doing.task)].place;
  if (place >= 0 && !places_.claim(place, player.person)) {
    wait_for(player, Waiting::Place);
    if (recorder_) recorder_->queue_length(place, places_.waiting(place));
    return;
  }
  player.held = place;
  player.doing.at.stage = Stage::Ready;
  go_on(player);
}

void Floor::on_freed(int place, std::int64_t at) {
  const std::optional<int> next = places_.release(place);
  if (!next) return;
  Player& player = players_[static_cast<std::size_t>(*next)];
  wake(player, at);
  player.held = place;
  player.doing.at.stage = Stage::Ready;
  go_on(player);
}

/// The clock calls somebody who waits.
void Floor::on_bell(Player& player, std::int64_t at) {
  if (player.waiting == Waiting::Place)
    places_.leave(player.script->tasks[static_cast<std::size_t>(player.doing.task)].place, player.person);
  if (player.waiting == Waiting::Pool) leave_team_queues(player);
  wake(player, at);
  interrupt(player);
  go_on(player);
}

void Floor::on_meet(Player& player) {
  const Cursor& at = player.doing.at;
  const int whom = (*at.ops)[static_cast<std::size_t>(at.op)].pool;
  wait_for(player, Waiting::Meet);
  meet(player, whom, player.now);
}

void Floor::on_home(const Player& player) {
  const int team = player.script->team;
  if (team >= 0) {
    pass_baton(player.person, player.now);
    meet(player, the_team, player.now);
  }
  meet(player, the_heat, player.now);
}

/// Whether everybody who is to meet `player`, and is still playing, waits at a meet.
bool Floor::all_met(const Player& player, int whom) const {
  return std::ranges::all_of(players_, [&](const Player& other) {
    const bool same = whom == the_team ? other.script->team == player.script->team
                                       : other.script->heat == player.script->heat;
    if (!same || other.home || other.waiting == Waiting::Meet) return true;
    return !other.result.took_part;
  });
}

/// Lets all go on who wait to meet, if the last of them has come (or gone home).
void Floor::meet(const Player& player, int whom, std::int64_t at) {
  if (!all_met(player, whom)) return;
  for (Player& other : players_) {
    if (other.home || other.waiting != Waiting::Meet) continue;
    const bool same = whom == the_team ? other.script->team == player.script->team
                                       : other.script->heat == player.script->heat;
    const Cursor& cursor = other.doing.at;
    if (!same || (*cursor.ops)[static_cast<std::size_t>(cursor.op)].pool != whom) continue;
    wake(other, at);
    ++other.doing.at.op;
    go_on(other);
  }
}

}  // namespace repwright::rehearsal
