#include "support/plans.hpp"

#include <fmt/format.h>
#include <cmath>

#include "base/random.hpp"

namespace repwright::test {

namespace {

using rehearsal::Op;
using rehearsal::OpKind;

body::Body body_of(int person, int run) {
  base::Stream luck(base::Seed{7}, static_cast<std::uint64_t>(run + 1), static_cast<std::uint64_t>(person),
                    base::Purpose::Body);
  body::Body body;
  const double fit = std::exp(0.15 * std::sin(1.7 * person)) * luck.lognormal(0.08);
  body.critical_speed = 3.9 * fit;
  body.reserve_distance = 165 * luck.lognormal(0.15);
  for (double& best : body.best_set) best *= 2 * fit * fit * luck.lognormal(0.2);
  body.cadence = 0.75 * luck.lognormal(0.06) / fit;
  body.recovery = luck.lognormal(0.1);
  return body;
}

rehearsal::Task task_of(int line, int bars) {
  rehearsal::Task task;
  task.step = {line};
  switch (line % 4) {
    case 0:
      task.effort = reps_spec(body::Group::Pull, 2.0, 1.4, 1);
      task.movement = {"pull-up"};
      task.place = bars > 0 ? 0 : -1;
      break;
    case 1:
      task.effort = reps_spec(body::Group::Push, 1.5, 1.0, 1);
      task.movement = {"push-up"};
      break;
    case 2:
      task.effort = reps_spec(body::Group::Legs, 1.6, 0.95, 1);
      task.movement = {"air-squat"};
      break;
    default:
      task.effort = reps_spec(body::Group::Core, 1.9, 0.6, 1);
      task.movement = {"sit-up"};
  }
  return task;
}

}  // namespace

rehearsal::RehearsalRequest Stage::request(int runs, std::uint64_t seed) const {
  return {.plan = plan,
          .timetable = timetable,
          .constants = constants,
          .cast = cast,
          .seed = base::Seed{seed},
          .runs = runs,
          .keep = rehearsal::Keep::Sums,
          .stop = {}};
}

body::EffortSpec reps_spec(body::Group group, double seconds, double cost, double share) {
  body::EffortSpec spec;
  spec.group = group;
  spec.weight[static_cast<std::size_t>(group)] = 1;
  spec.brisk = seconds;
  spec.sustained = seconds * 1.3;
  spec.cost = cost;
  spec.mode = 0.85;
  spec.ratio = share;
  return spec;
}

body::EffortSpec hold_spec() {
  body::EffortSpec spec;
  spec.kind = body::Effort::Kind::Hold;
  spec.group = body::Group::Core;
  spec.brisk = spec.sustained = 1;
  spec.cost = 0.01;
  spec.ratio = 1e9;
  spec.kappa = 1.0 / 55;
  spec.unit = domain::Unit::Seconds;
  return spec;
}

body::EffortSpec run_spec() {
  body::EffortSpec spec;
  spec.kind = body::Effort::Kind::Run;
  spec.unit = domain::Unit::Metres;
  return spec;
}

Stage mixed_class(const MixedPiece& piece) {
  constexpr std::array<double, 4> amounts{5, 10, 20, 15};
  Stage stage;
  rehearsal::Script script;
  script.score = domain::Score::RoundsReps;
  script.step_rounds = 0;
  script.ops.push_back({.kind = OpKind::Deadline, .amount = piece.seconds, .target = -1});
  for (int line = 0; line < piece.steps; ++line) {
    script.tasks.push_back(task_of(line, piece.bars));
    script.ops.push_back(
        {.kind = OpKind::Work, .amount = amounts[static_cast<std::size_t>(line % 4)], .task = line});
  }
  script.ops.push_back({.kind = OpKind::RoundDone});
  script.ops.push_back({.kind = OpKind::Jump, .target = 1});
  script.ops.push_back({.kind = OpKind::End});
  script.ops.front().target = static_cast<int>(script.ops.size()) - 1;
  const auto people = static_cast<std::size_t>(piece.people);
  rehearsal::ScriptedPiece scripted;
  scripted.scripts.assign(people, script);
  stage.plan.pieces.push_back(scripted);
  if (piece.bars > 0) stage.plan.places.push_back({{"pull-up-bar"}, piece.bars});
  stage.plan.late.assign(people, 0);
  timetable::Piece when;
  when.clock = timetable::ClockKind::Down;
  when.length = base::Duration::from_si(piece.seconds);
  stage.timetable.pieces.push_back(when);
  timetable::Box box;
  box.planned = when.length;
  box.piece = 0;
  stage.timetable.boxes.push_back(box);
  stage.cast.drawn = body_of;
  for (int p = 0; p < piece.people; ++p) {
    stage.cast.ids.push_back({fmt::format("p{}", p)});
    stage.cast.names.push_back(fmt::format("P{}", p));
    stage.cast.median.push_back(body_of(p, -1));
  }
  return stage;
}

}  // namespace repwright::test
