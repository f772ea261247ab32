#include "body/alone.hpp"

#include <algorithm>
#include <cmath>

namespace repwright::body {

namespace {

/// One pass over a piece.
class Pass {
 public:
  Pass(State& state, const Body& body, const Piece& piece, const Constants& constants)
      : state_(state), body_(body), constants_(constants), start_(state.clock), bell_(piece.bell) {}

  double clock() const { return state_.clock - start_; }
  double seconds_left() const { return bell_ - clock(); }

  /// Does the task, breaks included; whether it is done before the bell. Adds its units to `units`.
  bool run(const Task& task, const Pacing& pacing, double& units) {
    double left = task.amount;
    double wait = ready_in(state_, body_, task.effort, left, constants_);
    while (left > 1e-9) {
      if (wait >= seconds_left()) return false;
      if (wait > 0) rest(state_, body_, wait, constants_);
      const SetDone set = work(state_, body_, task.effort,
                               {.wanted = left, .seconds = seconds_left(), .pacing = pacing}, constants_);
      left -= set.units;
      units += set.units;
      if (set.bell) return false;
      if (left > 1e-9) wait = break_for(state_, body_, task.effort, left, constants_);
    }
    return true;
  }

  void change(const Task& task) {
    rest(state_, body_, std::min(task.change, std::max(0.0, seconds_left())), constants_);
  }

  /// All tasks in turn; whether they are done before the bell.
  bool run_all(const std::vector<Task>& tasks, const Pacing& pacing, AloneDone& done, double& units) {
    for (const Task& task : tasks) {
      if (!run(task, pacing, units)) return false;
      done.task_ends.push_back(clock());
      change(task);
    }
    return true;
  }

 private:
  State& state_;
  const Body& body_;
  const Constants& constants_;
  double start_;
  double bell_;
};

double total(const std::vector<Task>& tasks) {
  double units = 0;
  for (const Task& task : tasks) units += task.amount;
  return units;
}

/// Seconds of a lone run at the critical speed; what a person plans the end of a closing run by.
double critical_seconds(const std::vector<Task>& tasks, const Body& body) {
  double seconds = 0;
  for (const Task& task : tasks)
    if (task.effort.kind == Effort::Kind::Run) seconds += task.amount / body.critical_speed;
  return seconds;
}

}  // namespace

AloneDone alone(State& state, const Body& body, const Piece& piece, const Pacing& pacing,
                const Constants& constants) {
  AloneDone done;
  Pass pass(state, body, piece, constants);
  double outside = 0;
  bool going = pass.run_all(piece.before, pacing, done, outside);
  while (going && static_cast<double>(done.round_ends.size()) < piece.rounds) {
    double in_round = 0;
    going = pass.run_all(piece.round, pacing, done, in_round);
    done.units += in_round;
    if (going) {
      done.round_ends.push_back(pass.clock());
      done.rounds += 1;
    } else {
      done.rounds += in_round / total(piece.round);
    }
    going = going && pass.seconds_left() > 0;
  }
  const double closing = critical_seconds(piece.after, body);
  Pacing last = pacing;
  if (closing > 0) last.end = state.clock + closing;
  done.finished = going && pass.run_all(piece.after, last, done, outside);
  done.seconds = done.finished && !done.task_ends.empty() ? done.task_ends.back() : pass.clock();
  return done;
}

AloneDone alone_at_best(const Body& body, const Piece& piece, double guess, const Constants& constants) {
  double end = std::min(guess, piece.bell);
  AloneDone done;
  for (int round = 0; round < 4; ++round) {
    State state = fresh(body, 1, constants);
    done = alone(state, body, piece, pace_for(end, end), constants);
    if (std::isfinite(piece.bell) || std::abs(done.seconds - end) < 0.05) break;
    end = done.seconds;
  }
  return done;
}

}  // namespace repwright::body
