#include <algorithm>

#include "base/require.hpp"
#include "rehearsal/floor.hpp"

/// One person's way through their script.
namespace repwright::rehearsal {

namespace {

constexpr int most_steps =
    4'000'000;  // between two events; beyond it a script goes round without taking time

double score_units(const Counts& counts) {
  return counts.reps + counts.metres + counts.kcal;
}

bool is_work(OpKind kind) {
  return kind == OpKind::Work || kind == OpKind::MaxSet || kind == OpKind::Pool;
}

}  // namespace

void Floor::go_on(Player& player) {
  for (int steps = 0; steps < most_steps; ++steps) {
    if (step(player) == Flow::Parked) return;
  }
  base::require(false, "a script takes time");
}

Floor::Flow Floor::step(Player& player) {
  const Cursor& at = player.doing.at;
  if (at.op >= static_cast<int>(at.ops->size())) {
    if (!player.outer) return go_home(player), Flow::Parked;
    const bool called = player.script->duty && at.ops == &player.script->duty->ops;
    player.doing = *player.outer;
    player.outer.reset();
    if (called) skip_missed_calls(player, *player.script->duty);
    return Flow::On;
  }
  const Op& op = (*at.ops)[static_cast<std::size_t>(at.op)];
  switch (op.kind) {
    case OpKind::Work:
    case OpKind::MaxSet:
    case OpKind::Pool:
      return work(player, op);
    case OpKind::Rest:
    case OpKind::RestRatio:
    case OpKind::RestReady:
    case OpKind::WaitUntil:
    case OpKind::TakeBaton:
    case OpKind::Meet:
      return take_time(player, op);
    case OpKind::End:
      return go_home(player), Flow::Parked;
    default:
      return control(player, op), Flow::On;
  }
}

Floor::Flow Floor::take_time(Player& player, const Op& op) {
  if (player.now >= limit_of(player)) return interrupt(player);
  switch (op.kind) {
    case OpKind::RestRatio:
      return script_rest(player, op.amount * seconds_of(player.now - player.mark));
    case OpKind::RestReady:
      return script_rest(player, std::min(longest_free_rest, ready_for_next(player)));
    case OpKind::WaitUntil:
      return wait_until(player, op.amount);
    case OpKind::TakeBaton:
      return park(player, EventKind::Turn), Flow::Parked;
    case OpKind::Meet:
      return park(player, EventKind::Meet), Flow::Parked;
    default:
      return script_rest(player, op.amount);
  }
}

Floor::Flow Floor::wait_until(Player& player, double clock) {
  player.doing.at.resumed = false;
  const std::int64_t wait = std::max(std::int64_t{0}, player.zero + whole_ms(clock) - player.now);
  // Who has done all that the interval asked waits for the clock; who was cut short only rests.
  if (!player.missed)
    player.result.losses[static_cast<std::size_t>(domain::Limiter::Clock)] +=
        std::min(wait, limit_of(player) - player.now);
  return script_rest(player, seconds_of(wait));
}

Floor::Flow Floor::script_rest(Player& player, double seconds) {
  Cursor& at = player.doing.at;
  if (at.resumed) seconds = at.left;
  const std::int64_t before = player.now;
  const bool whole = idle(player, whole_ms(seconds));
  const std::int64_t rested = player.now - before;
  player.pacing.end += seconds_of(rested);
  player.result.active -= rested;
  at.resumed = !whole;
  at.left = seconds - seconds_of(rested);
  if (!whole) return interrupt(player);
  ++at.op;
  return Flow::On;
}

void Floor::control(Player& player, const Op& op) {
  Cursor& at = player.doing.at;
  ++at.op;
  switch (op.kind) {
    case OpKind::Deadline:
      player.deadline = player.zero + whole_ms(std::min(op.amount, longest_piece));
      player.on_bell = op.target;
      player.missed = false;
      return;
    case OpKind::NoDeadline:
      player.deadline = player.zero + whole_ms(longest_piece);
      player.on_bell = -1;
      return;
    case OpKind::Resume:
      if (player.cut) at = *player.cut;
      player.cut.reset();
      return;
    case OpKind::Mark:
      player.mark = player.now;
      player.mark_count = score_units(player.result.counts);
      player.missed = false;
      return;
    case OpKind::Lap:
      return end_lap(player);
    case OpKind::RoundDone:
      ++player.result.rounds;
      if (player.script->team >= 0) ++teams_[static_cast<std::size_t>(player.script->team)].rounds;
      return;
    case OpKind::Jump:
      at.op = op.target;
      return;
    case OpKind::PassBaton:
      agenda_.post({{player.now}, Phase::Release, EventKind::Pass, player.person});
      return;
    default:
      return;
  }
}

void Floor::end_lap(Player& player) {
  PieceResult& result = player.result;
  const std::int64_t took = player.now - player.mark;
  const double made = score_units(result.counts) - player.mark_count;
  if (recorder_) recorder_->lap({player.person, piece_index_}, result.laps, took);
  ++result.laps;
  if (!player.missed) ++result.full_laps;
  result.lap_sum += took;
  result.lap_longest = std::max(result.lap_longest, took);
  result.lap_shortest = std::min(result.lap_shortest, took);
  result.lap_most = std::max(result.lap_most, made);
  result.lap_least = std::min(result.lap_least, made);
}

void Floor::go_home(Player& player) {
  let_go(player);
  player.home = true;
  player.result.home = player.now;
  player.result.capped = player.cut_work;
  player.result.active += player.now - player.zero;
  ++player.token;
  agenda_.post({{player.now}, Phase::Finish, EventKind::Home, player.person, player.token});
}

/// When the clock calls next: the bell, or the duty unless one is being done.
std::int64_t Floor::limit_of(const Player& player) {
  return player.outer ? player.deadline : std::min(player.deadline, player.next_duty);
}

/// The clock has called: goes on at the bell's target, or to the duty.
Floor::Flow Floor::interrupt(Player& player) {
  let_go(player);
  if (player.now >= player.deadline) {
    bell(player);
    return Flow::On;
  }
  const std::optional<Duty>& duty = player.script->duty;
  base::require(duty.has_value(), "only a bell or a duty interrupts");
  if (!duty) return Flow::On;
  player.next_duty += whole_ms(duty->every);
  if (player.doing.at.stage != Stage::Begin) player.doing.at.stage = Stage::Claim;
  set_aside(player, duty->ops);
  return Flow::On;
}

/// Who does as many as possible at each call has done so for the calls that came meanwhile: without this, a
/// largest set that lasts longer than the calls are apart is followed by the next for ever.
void Floor::skip_missed_calls(Player& player, const Duty& duty) {
  const auto open_ended = [](const Op& op) { return op.kind == OpKind::MaxSet; };
  if (std::ranges::none_of(duty.ops, open_ended)) return;
  while (player.next_duty <= player.now) player.next_duty += whole_ms(duty.every);
}

void Floor::set_aside(Player& player, const std::vector<Op>& ops) {
  player.outer = player.doing;
  player.doing.at = {.ops = &ops};
}

void Floor::bell(Player& player) {
  close_stint(player);
  if (player.outer) {
    player.doing = *player.outer;
    player.outer.reset();
    close_stint(player);
  }
  Cursor& at = player.doing.at;
  const bool work = is_work((*at.ops)[static_cast<std::size_t>(at.op)].kind);
  player.missed = player.missed || work;
  player.cut_work = work;
  player.cut = {.ops = at.ops,
                .op = work ? at.op : at.op + 1,
                .resumed = work && (at.stage != Stage::Begin || at.resumed),
                .left = at.left};
  at = {.ops = at.ops, .op = player.on_bell >= 0 ? player.on_bell : static_cast<int>(at.ops->size())};
  player.paid = false;
  player.on_bell = -1;
  player.deadline = player.zero + whole_ms(longest_piece);
  // Who has not come home after hours is taken out: no later deadline can keep them.
  if (player.now >= player.deadline) at.op = static_cast<int>(at.ops->size());
}

/// Rests; false if the clock calls before the rest is over.
bool Floor::idle(Player& player, std::int64_t ms) {
  const std::int64_t most = std::max(std::int64_t{0}, limit_of(player) - player.now);
  const std::int64_t spent = std::clamp(ms, std::int64_t{0}, most);
  if (spent > 0) {
    const double seconds = seconds_of(spent);
    body::rest(player.state, *player.body, seconds, constants_);
    player.result.oxygen += constants_.standing_rate / 60 * seconds;
    player.now += spent;
  }
  return spent >= ms;
}

/// Rounds done, by the team if there is one.
int Floor::rounds_of(const Player& player) const {
  const int team = player.script->team;
  return team < 0 ? player.result.rounds : teams_[static_cast<std::size_t>(team)].rounds;
}

/// Seconds until the set that the script asks for next could begin.
double Floor::ready_for_next(const Player& player) const {
  const Cursor& at = player.doing.at;
  int next = at.op + 1;
  for (std::size_t looked = 0; looked < at.ops->size() && next < static_cast<int>(at.ops->size()); ++looked) {
    const Op& op = (*at.ops)[static_cast<std::size_t>(next)];
    if (is_work(op.kind)) {
      const double units = op.kind == OpKind::Work ? op.amount : 1e9;
      return body::ready_in(player.state, *player.body, player.efforts[op.task], units, constants_);
    }
    next = op.kind == OpKind::Jump ? op.target : next + 1;
  }
  return 0;
}

}  // namespace repwright::rehearsal
