#include <algorithm>

#include "rehearsal/floor.hpp"

/// One line of work: walk there, claim the place, sets and breaks, walk away.
namespace repwright::rehearsal {

namespace {

constexpr double nothing = 1e-9;  // units
constexpr double endless = 1e9;   // units

const Task& task_of(const Player& player) {
  return player.script->tasks[static_cast<std::size_t>(player.doing.task)];
}

bool is_engine(const body::Effort& effort) {
  return effort.kind == body::Effort::Kind::Run || effort.kind == body::Effort::Kind::Machine;
}

/// An engine whose units are distance or energy: those can take longer than usual, a minute cannot.
bool covers_ground(const body::Effort& effort) {
  return is_engine(effort) && effort.display != body::Effort::Display::Seconds;
}

std::int64_t& loss(Player& player, domain::Limiter limiter) {
  return player.result.losses[static_cast<std::size_t>(limiter)];
}

std::int64_t& loss(Player& player, body::Group group) {
  return player.result.losses[static_cast<std::size_t>(group)];
}

}  // namespace

static_assert(static_cast<std::size_t>(domain::Limiter::Grip) == static_cast<std::size_t>(body::Group::Grip),
              "the first limiters are the groups, in their order");

Floor::Flow Floor::work(Player& player, const Op& op) {
  switch (player.doing.at.stage) {
    case Stage::Begin:
      return begin_work(player, op);
    case Stage::Claim:
      return claim(player);
    case Stage::Ready:
      return get_ready(player);
    case Stage::Set:
      return one_set(player, op);
    case Stage::Turn:
      return ask_for_turn(player);
    case Stage::Break:
      return take_break(player);
  }
  return Flow::On;
}

/// Takes a task in hand, with the luck of the day's line.
void Floor::take_up(Player& player, int task) {
  Doing& doing = player.doing;
  doing.task = task;
  doing.effort = player.efforts[task];
  if (covers_ground(doing.effort) || doing.effort.kind == body::Effort::Kind::Hold) return;
  const Task& held = player.script->tasks[static_cast<std::size_t>(task)];
  doing.effort.brisk = std::max(doing.effort.brisk * doing.stretch, held.held_pace);
  doing.effort.sustained = std::max(doing.effort.sustained * doing.stretch, held.held_pace);
  doing.effort.cost *= doing.stretch;
}

Floor::Flow Floor::begin_work(Player& player, const Op& op) {
  if (player.now >= limit_of(player)) return interrupt(player);
  Doing& doing = player.doing;
  if (!doing.at.resumed) doing.at.left = op.kind == OpKind::Work ? op.amount : endless;
  if (doing.at.left <= nothing) {
    ++doing.at.op;
    doing.at.resumed = false;
    return Flow::On;
  }
  doing.at.stage = Stage::Claim;
  doing.at.resumed = false;
  doing.stint = {
      .op = doing.at.op + (player.outer ? aside : 0), .round = rounds_of(player), .start = player.now};
  doing.stretch = (player.luck ? player.luck->stretch() : 1) * stretch_of(player);
  take_up(player, op.task);
  player.cut_work = false;
  const Task& task = task_of(player);
  double walk = task.outdoors ? task.door : 0;
  if (player.last_task >= 0 && player.last_task != op.task)
    walk += std::max(0.0, player.body->transition + task.set_up - seconds_of(player.now - player.last_end));
  if (walk <= 0) return Flow::On;
  const std::int64_t before = player.now;
  const bool there = idle(player, whole_ms(walk));
  loss(player, domain::Limiter::Pace) += player.now - before;
  return there ? Flow::On : interrupt(player);
}

Floor::Flow Floor::claim(Player& player) {
  // Who comes back from a duty may have missed the next call.
  if (player.now >= limit_of(player)) return interrupt(player);
  const int place = crowded_ ? task_of(player).place : -1;
  if (place >= 0 && player.held != place) {
    let_go(player);
    park(player, EventKind::Claim);
    return Flow::Parked;
  }
  player.doing.at.stage = Stage::Ready;
  return Flow::On;
}

Floor::Flow Floor::get_ready(Player& player) {
  const Op& op = (*player.doing.at.ops)[static_cast<std::size_t>(player.doing.at.op)];
  player.doing.at.stage = op.kind == OpKind::Pool ? Stage::Turn : Stage::Set;
  if (op.kind == OpKind::Pool) return Flow::On;
  // As many as possible of what cannot be done once are none: nobody waits for them.
  if (op.kind == OpKind::MaxSet && player.doing.effort.best < 1) return finish_work(player);
  const double wait =
      body::ready_in(player.state, *player.body, player.doing.effort, player.doing.at.left, constants_);
  if (wait > 0 && !rest_at_work(player, wait)) return interrupt(player);
  return Flow::On;
}

Floor::Flow Floor::one_set(Player& player, const Op& op) {
  const std::int64_t limit = limit_of(player);
  if (player.now >= limit) return interrupt(player);
  Cursor& at = player.doing.at;
  const Task& task = task_of(player);
  const bool to_failure = op.kind == OpKind::MaxSet;
  double wanted = at.left;
  if (to_failure) wanted = std::max(1.0, units_to_failure(player) - op.amount);
  if (task.planned_set > 0) wanted = std::min(wanted, static_cast<double>(task.planned_set));
  // Half a millisecond of grace: a rep that ends with the bell counts, however its seconds were rounded.
  const double seconds = seconds_of(limit - player.now) + 0.0005;
  const body::SetDone done = lift(player, {.wanted = wanted, .seconds = seconds, .to_failure = to_failure});
  player.now = done.bell ? limit : std::min(limit, player.now + whole_ms(done.seconds));
  at.left -= done.units;
  if (at.left <= nothing || (to_failure && !done.bell)) return finish_work(player);
  if (player.now >= limit) return interrupt(player);
  at.stage = Stage::Break;
  return Flow::On;
}

/// What this piece takes of the person beyond what their body tells.
double Floor::stretch_of(const Player& player) const {
  return setting_->stretch_of(piece_->piece, static_cast<std::size_t>(player.person)).value_or(1);
}

/// Units that an unbroken set would give now if carried to failure.
double Floor::units_to_failure(const Player& player) const {
  body::State probe = player.state;
  const body::SetPlan plan{.wanted = endless, .to_failure = true, .pacing = player.pacing};
  return body::work(probe, *player.body, player.doing.effort, plan, constants_).units;
}

/// One unbroken set. A run or machine on a day of bad luck is as if the way were longer.
body::SetDone Floor::lift(Player& player, const body::SetPlan& plan) {
  const Doing& doing = player.doing;
  const double longer = covers_ground(doing.effort) ? doing.stretch : 1;
  const double rate = is_engine(doing.effort)
                          ? body::target_rate(player.state, player.pacing, constants_) * doing.effort.mode
                          : constants_.standing_rate;
  body::SetPlan whole = plan;
  whole.wanted *= longer;
  whole.pacing = player.pacing;
  body::SetDone done = body::work(player.state, *player.body, doing.effort, whole, constants_);
  done.units /= longer;
  const Task& task = task_of(player);
  const double held = covers_ground(doing.effort) ? done.units * task.held_pace - done.seconds : 0;
  const double slower = std::max(done.units * task.turn_cost, held);
  if (slower > 0) {
    const double share = plan.seconds / (done.seconds + slower);
    done.bell = done.bell || share < 1;
    if (share < 1) done.units *= share;
    const double spent = std::min(plan.seconds, done.seconds + slower) - done.seconds;
    if (spent > 0) body::rest(player.state, *player.body, spent, constants_);
    done.seconds += std::max(0.0, spent);
  }
  done.seconds = std::min(done.seconds, seconds_of(limit_of(player) - player.now));
  account(player, done, rate);
  return done;
}

/// Books units, oxygen and where the seconds of a set have gone.
void Floor::account(Player& player, const body::SetDone& done, double oxygen_rate) {
  const body::Effort& effort = player.doing.effort;
  const Task& task = task_of(player);
  const std::int64_t took = whole_ms(done.seconds);
  PieceResult& result = player.result;
  player.doing.stint.work += took;
  ++player.doing.stint.sets;
  player.doing.stint.units += done.units;
  result.oxygen += oxygen_rate / 60 * done.seconds;
  if (task.counted) {
    const double units = done.units / task.score_factor;
    if (task.unit == domain::Unit::Reps) result.counts.reps += units;
    if (task.unit == domain::Unit::Metres) result.counts.metres += units;
    if (task.unit == domain::Unit::Kilocalories) result.counts.kcal += units;
  }
  if (is_engine(effort)) {
    loss(player, domain::Limiter::Engine) += took;
    return;
  }
  result.oxygen += effort.cost * done.units;
  const double unit = effort.brisk + (effort.sustained - effort.brisk) * player.pacing.settled;
  const double brisk = done.units * unit;
  const auto group = static_cast<std::size_t>(effort.group);
  const double after = body::sum(player.state.pools[group]);
  const double mid = std::max(0.0, after - 0.5 * done.units * effort.drain);
  const bool fades = effort.kind == body::Effort::Kind::Reps;
  const double fade = fades ? brisk * constants_.fade * std::min(1.0, mid / (1 - effort.theta)) : 0;
  const std::int64_t pace = std::min(took, whole_ms(brisk));
  const std::int64_t faded = std::min(took - pace, whole_ms(fade));
  loss(player, domain::Limiter::Pace) += pace;
  loss(player, effort.group) += faded;
  loss(player, domain::Limiter::Engine) += took - pace - faded;
}

Floor::Flow Floor::take_break(Player& player) {
  if (!player.script->penalty.empty() && !player.outer && !player.paid) {
    player.paid = true;
    let_go(player);
    set_aside(player, player.script->penalty);
    return Flow::On;
  }
  player.paid = false;
  if (!piece_->keep_place_while_resting) let_go(player);
  Cursor& at = player.doing.at;
  const double rest = body::break_for(player.state, *player.body, player.doing.effort, at.left, constants_);
  if (!rest_at_work(player, rest)) return interrupt(player);
  const Op& op = (*at.ops)[static_cast<std::size_t>(at.op)];
  const bool ready = op.kind == OpKind::Work && (!crowded_ || task_of(player).place == player.held);
  at.stage = ready ? Stage::Set : Stage::Claim;
  return Flow::On;
}

/// Rests between sets; false if the clock calls first. Endless: what cannot be done is waited out.
bool Floor::rest_at_work(Player& player, double seconds) {
  const std::int64_t before = player.now;
  const bool whole = idle(player, whole_ms(std::min(seconds, longest_piece)));
  player.doing.stint.rest += player.now - before;
  loss(player, player.doing.effort.group) += player.now - before;
  return whole;
}

Floor::Flow Floor::finish_work(Player& player) {
  const Task& task = task_of(player);
  if (task.outdoors && task.door > 0) {
    const std::int64_t before = player.now;
    const bool back = idle(player, whole_ms(task.door));
    loss(player, domain::Limiter::Pace) += player.now - before;
    if (!back && player.now >= player.deadline) return interrupt(player);
  }
  player.last_task = player.doing.task;
  player.last_end = player.now;
  close_stint(player);
  ++player.doing.at.op;
  player.doing.at.stage = Stage::Begin;
  if (!keeps_place(player)) let_go(player);
  return Flow::On;
}

void Floor::close_stint(Player& player) {
  Doing& doing = player.doing;
  if (doing.at.stage == Stage::Begin) return;
  doing.stint.end = player.now;
  doing.stint.task = doing.task;
  if (recorder_ && (doing.stint.sets > 0 || doing.stint.wait > 0 || doing.stint.rest > 0))
    recorder_->worked({player.person, piece_index_}, doing.stint, player);
}

void Floor::let_go(Player& player) {
  if (player.held < 0) return;
  agenda_.post({{player.now}, Phase::Release, EventKind::Freed, player.held});
  player.held = -1;
}

/// Whether the very next line needs the same place: nobody jumps off the bar to queue for it again.
bool Floor::keeps_place(const Player& player) {
  const Cursor& at = player.doing.at;
  if (player.held < 0) return true;
  for (auto op = at.ops->begin() + at.op; op != at.ops->end(); ++op) {
    if (op->kind == OpKind::RoundDone || op->kind == OpKind::Mark || op->kind == OpKind::Lap) continue;
    const bool work = op->kind == OpKind::Work || op->kind == OpKind::MaxSet;
    return work && player.script->tasks[static_cast<std::size_t>(op->task)].place == player.held;
  }
  return false;
}

}  // namespace repwright::rehearsal
