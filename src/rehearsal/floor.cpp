#include "rehearsal/floor.hpp"

#include <algorithm>
#include <cmath>

#include "base/require.hpp"

namespace repwright::rehearsal {

namespace {

std::vector<int> counts_of(const FloorPlan& plan) {
  std::vector<int> counts;
  counts.reserve(plan.places.size());
  for (const FloorPlace& place : plan.places) counts.push_back(place.count);
  return counts;
}

/// An effort as a judge sees it who wants each rep so much bigger.
body::Effort judged(body::Effort effort, double bigger) {
  if (effort.kind != body::Effort::Kind::Reps) return effort;
  effort.brisk *= bigger;
  effort.sustained *= bigger;
  effort.cost *= bigger;
  return effort;
}

}  // namespace

Floor::Floor(const FloorPlan& plan, const timetable::Timetable& timetable, const body::Constants& constants,
             Crowd crowd)
    : plan_(plan),
      timetable_(timetable),
      constants_(constants),
      crowded_(crowd == Crowd::Shared),
      places_(counts_of(plan)),
      players_(plan.late.size()),
      boxes_(timetable.boxes.size()) {
  std::size_t efforts = 0;
  for (const ScriptedPiece& piece : plan.pieces) {
    base::require(piece.scripts.size() == players_.size(), "every person has a script in every piece");
    results_.emplace_back(players_.size());
    std::vector<std::size_t>& first = first_effort_.emplace_back();
    for (const Script& script : piece.scripts) {
      first.push_back(efforts);
      efforts += script.tasks.size();
    }
  }
  efforts_.resize(efforts);
  for (std::size_t p = 0; p < players_.size(); ++p) players_[p].person = static_cast<int>(p);
}

void Floor::make_efforts(const RunSetting& setting) {
  auto next = efforts_.begin();
  for (const ScriptedPiece& piece : plan_.pieces)
    for (std::size_t p = 0; p < players_.size(); ++p) {
      body::Body body = setting.bodies[p];
      if (setting.stretch_of(piece.piece, p)) body.knack = 0;
      for (const Task& task : piece.scripts[p].tasks)
        *next++ = judged(body::effort_of(task.effort, body, constants_), setting.judge[p]);
    }
}

void Floor::wake_up(const RunSetting& setting) {
  for (std::size_t p = 0; p < players_.size(); ++p) {
    Player& player = players_[p];
    player.body = &setting.bodies[p];
    player.state = body::fresh(setting.bodies[p], setting.critical_factor[p], constants_);
    player.now = 0;
    player.luck.reset();
    if (const auto& luck = setting.luck[p]) player.luck.emplace(*luck);
  }
  played_.assign(plan_.pieces.size(), false);
}

void Floor::play(const RunSetting& setting, Recorder* recorder) {
  setting_ = &setting;
  recorder_ = recorder;
  make_efforts(setting);
  wake_up(setting);
  std::int64_t now = 0;
  for (std::size_t b = 0; b < timetable_.boxes.size(); ++b) {
    const timetable::Box& box = timetable_.boxes[b];
    if (box.starts_at) now = std::max(now, whole_ms(box.starts_at->si()));
    boxes_[b].start = now;
    std::int64_t end = now;
    const auto piece = std::ranges::find(plan_.pieces, box.piece.value_or(-1), &ScriptedPiece::piece);
    const auto index = static_cast<std::size_t>(piece - plan_.pieces.begin());
    if (piece != plan_.pieces.end() && !played_[index]) {
      played_[index] = true;
      end = play_piece(static_cast<int>(index), now);
    }
    if (box.planned) end = std::max(end, now + whole_ms(box.planned->si() * setting.box_factor[b]));
    boxes_[b].end = now = end;
  }
}

std::int64_t Floor::play_piece(int piece, std::int64_t start) {
  piece_index_ = piece;
  piece_ = &plan_.pieces[static_cast<std::size_t>(piece)];
  const timetable::Piece& when = timetable_.pieces[static_cast<std::size_t>(piece_->piece)];
  reset_teams(*piece_);
  places_.clear();
  for (Player& player : players_) {
    player.script = &piece_->scripts[static_cast<std::size_t>(player.person)];
    player.result = PieceResult{};
    player.home = true;
  }
  const std::int64_t change = whole_ms(piece_->heat_change);
  std::int64_t signal = start;
  std::int64_t end = start;
  for (int heat = 0; heat < piece_->heats; ++heat) {
    if (heat > 0) signal = end + change;
    end = std::max(play_heat(heat, signal), signal);
    if (when.length) end = std::max(end, signal + whole_ms(when.length->si()));
  }
  share_team_results();
  return end;
}

void Floor::reset_teams(const ScriptedPiece& piece) {
  teams_.resize(piece.teams.size());
  for (std::size_t t = 0; t < teams_.size(); ++t) {
    const Team& team = piece.teams[t];
    TeamState& state = teams_[t];
    state.holder = 0;
    state.rounds = 0;
    state.pools.resize(team.pools.size());
    for (Pool& pool : state.pools) {
      pool.fillings.clear();
      pool.visits.assign(team.people.size(), 0);
      pool.waiting.clear();
      pool.worker = pool.last_worker = -1;
    }
  }
}

std::int64_t Floor::play_heat(int heat, std::int64_t signal) {
  agenda_.clear();
  auto& results = results_[static_cast<std::size_t>(piece_index_)];
  for (std::size_t p = 0; p < players_.size(); ++p) {
    Player& player = players_[p];
    const Script& script = *player.script;
    if (script.heat != heat) continue;
    player.efforts = efforts_.data() + first_effort_[static_cast<std::size_t>(piece_index_)][p];
    player.zero = signal + whole_ms(script.start);
    const std::int64_t arrives = std::max(player.zero, whole_ms(plan_.late[p]));
    agenda_.post({{arrives}, Phase::Start, EventKind::Start, player.person, ++player.token});
  }
  std::int64_t last = signal;
  while (!agenda_.empty()) handle(agenda_.pop());
  for (std::size_t p = 0; p < players_.size(); ++p) {
    if (players_[p].script->heat != heat) continue;
    results[p] = players_[p].result;
    if (results[p].took_part) last = std::max(last, results[p].home);
  }
  return last;
}

void Floor::handle(const Event& event) {
  if (event.kind == EventKind::Freed) return on_freed(event.who, event.at.ms);
  if (event.kind == EventKind::Pass) return pass_baton(event.who, event.at.ms);
  if (event.kind == EventKind::PoolFree)
    return free_pool(event.who, static_cast<int>(event.token), event.at.ms);
  Player& player = players_[static_cast<std::size_t>(event.who)];
  if (event.token != player.token) return;
  switch (event.kind) {
    case EventKind::Start:
      return join(player, event.at.ms);
    case EventKind::Claim:
      return on_claim(player);
    case EventKind::Bell:
      return on_bell(player, event.at.ms);
    case EventKind::Turn:
      return on_turn(player);
    case EventKind::Meet:
      return on_meet(player);
    case EventKind::Home:
      return on_home(player);
    case EventKind::Freed:
    case EventKind::Pass:
    case EventKind::PoolFree:
      return;
  }
}

/// Somebody of the heat was there, and all of them have gone home.
bool Floor::over_for_others(const Player& player, std::int64_t at) const {
  bool somebody = false;
  for (const Player& other : players_) {
    if (&other == &player || other.script->heat != player.script->heat || !other.result.took_part) continue;
    if (!other.home || other.result.home > at) return false;
    somebody = true;
  }
  return somebody;
}

void Floor::join(Player& player, std::int64_t at) {
  if (at > player.zero && over_for_others(player, at)) return;
  if (player.state.clock > 0 && at > player.now)
    body::rest(player.state, *player.body, seconds_of(at - player.now), constants_);
  const Script& script = *player.script;
  player.now = at;
  player.deadline = player.zero + whole_ms(longest_piece);
  player.on_bell = -1;
  player.next_duty = script.duty ? player.zero + whole_ms(script.duty->first) : never;
  while (script.duty && player.next_duty < at) player.next_duty += whole_ms(script.duty->every);
  player.doing.at = {.ops = &script.ops};
  player.outer.reset();
  player.cut.reset();
  player.cut_work = player.missed = player.paid = player.home = false;
  player.last_task = player.held = -1;
  player.mark = player.zero;
  player.mark_count = 0;
  player.result.zero = player.zero;
  player.result.active = player.zero - at;  // what was missed is no activity
  player.result.took_part = true;
  const auto piece = static_cast<std::size_t>(piece_index_);
  const double target = setting_->targets[piece][static_cast<std::size_t>(player.person)];
  player.pacing = body::pace_for(player.state.clock + target, target);
  if (player.luck) idle(player, whole_ms(latest_reaction * player.luck->reaction()));
  ++player.token;
  go_on(player);
}

void Floor::share_team_results() {
  auto& results = results_[static_cast<std::size_t>(piece_index_)];
  for (std::size_t t = 0; t < teams_.size(); ++t) {
    Counts sum;
    std::int64_t home = 0;
    bool capped = false;
    for (const int person : piece_->teams[t].people) {
      const PieceResult& result = results[static_cast<std::size_t>(person)];
      sum.reps += result.counts.reps;
      sum.metres += result.counts.metres;
      sum.kcal += result.counts.kcal;
      home = std::max(home, result.home);
      capped = capped || result.capped;
    }
    for (const int person : piece_->teams[t].people) {
      PieceResult& result = results[static_cast<std::size_t>(person)];
      result.counts = sum;
      result.home = home;
      result.capped = capped;
      result.rounds = teams_[t].rounds;
    }
  }
}

}  // namespace repwright::rehearsal
