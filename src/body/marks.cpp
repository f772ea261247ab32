#include "body/marks.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "body/alone.hpp"
#include "body/effort.hpp"
#include "body/engine.hpp"

namespace repwright::body {

double run_seconds(const Body& body, double metres, const Constants& constants) {
  const double reserve = body.reserve_distance * (1 - constants.reserve_kept);
  const double start = body.reserve_distance / std::max(0.5, body.top_speed - body.critical_speed);
  // CS t + D' t / (t + start) = distance, the positive root.
  const double b = body.critical_speed * start + reserve - metres;
  const double seconds =
      (std::sqrt(b * b + 4 * body.critical_speed * metres * start) - b) / (2 * body.critical_speed);
  if (seconds <= constants.durability_from) return seconds;
  const double riegel = constants.durability / (1 - constants.durability);
  return seconds * std::pow(seconds / constants.durability_from, riegel);
}

double machine_seconds(const Body& body, const Effort& effort, double units, const Constants& constants) {
  const State state = fresh(body, 1, constants);
  double seconds = units / engine_speed(effort, state.critical_rate * effort.mode, constants);
  for (int round = 0; round < 8; ++round) {
    const double rate = engine_rate(state, body, {.end = seconds}, constants) * effort.mode;
    seconds = units / engine_speed(effort, rate, constants);
  }
  return seconds;
}

double units_within(const Body& body, const Effort& effort, double seconds, const Constants& constants) {
  Effort smooth = effort;
  if (smooth.kind == Effort::Kind::Reps) smooth.kind = Effort::Kind::Carry;  // fractions, for derivatives
  State state = fresh(body, 1, constants);
  Piece piece;
  piece.round = {{.effort = smooth, .amount = std::numeric_limits<double>::infinity()}};
  piece.bell = seconds;
  return alone(state, body, piece, pace_for(seconds, seconds), constants).units;
}

namespace {

using Predict = std::function<double(const Body&)>;
using Result = Measurement<parameter_count>;

/// One person's marks being read.
struct Reading {
  const PullScale& pull;
  const domain::Catalogue& catalogue;
  const Constants& constants;
  std::vector<Result>& to;

  void add(const Predict& predict, double seen, double sd, const std::vector<Parameter>& touched = {}) const {
    to.push_back(
        {[predict, scale = pull, &all = constants](const std::array<double, parameter_count>& point) {
           return predict(body_at(point, scale, all));
         },
         seen, sd});
    for (const Parameter each : touched) to.back().places.push_back(index_of(each));
  }
  EffortSpec spec(const domain::Movement& movement, domain::Unit unit, double load = 0) const {
    return effort_spec(movement, unit, load, constants);
  }
  const domain::Movement* find(const domain::MovementId& id) const { return catalogue.find(id); }
};

double positive_log(double value) {
  return base::log(std::max(1e-3, value));
}

void read(const Reading& reading, const domain::TimedDistance& mark) {
  const double metres = mark.distance.si(), seconds = mark.time.si();
  const domain::Movement* movement = reading.find(mark.movement);
  if (movement == nullptr || metres <= 0 || seconds <= 0) return;
  const EffortSpec spec = reading.spec(*movement, domain::Unit::Metres);
  const Constants& all = reading.constants;
  if (spec.kind == Effort::Kind::Run)
    reading.add([metres, &all](const Body& body) { return base::log(run_seconds(body, metres, all)); },
                base::log(seconds), metres < 600 ? all.marks.short_run : all.marks.run,
                {Parameter::CriticalSpeed, Parameter::ReserveDistance, Parameter::TopSpeed});
  else if (spec.kind == Effort::Kind::Machine)
    reading.add(
        [spec, metres, &all](const Body& body) {
          return base::log(machine_seconds(body, effort_of(spec, body, all), metres, all));
        },
        base::log(seconds), all.marks.machine);
}

/// Without a load the capacity of the own group is all that a largest set depends on.
std::vector<Parameter> touched_by_set(const EffortSpec& spec) {
  if (spec.strength) return {};
  constexpr std::array capacities{Parameter::Push, Parameter::Pull, Parameter::Legs, Parameter::Core,
                                  Parameter::Grip};
  return {capacities.at(index_of(spec.group))};
}

void read(const Reading& reading, const domain::BestSet& mark) {
  const domain::MovementId swung{mark.any_style && mark.movement.text == "pull-up" ? "kip-pull-up"
                                                                                   : mark.movement.text};
  const domain::Movement* movement = reading.find(swung);
  if (movement == nullptr) movement = reading.find(mark.movement);
  if (movement == nullptr) return;
  const EffortSpec spec = reading.spec(*movement, domain::Unit::Reps);
  const Constants& all = reading.constants;
  // A set that failed at the first rep tells less than its half step below one suggests.
  const double seen = mark.reps < 1 ? log_of_set(-1) : base::log(mark.reps);
  const double one_rep = mark.reps < 1 ? .35 : all.marks.set_rep / mark.reps;
  const double judged =
      mark.any_style ? std::hypot(all.marks.any_style, all.marks.any_style_rep / std::max(1.0, mark.reps))
                     : all.marks.set;
  reading.add([spec, &all](const Body& body) { return log_of_set(effort_of(spec, body, all).best); }, seen,
              std::hypot(judged, one_rep), touched_by_set(spec));
}

void read(const Reading& reading, const domain::TimedReps& mark) {
  const domain::Movement* movement = reading.find(mark.movement);
  const double seconds = mark.window.si();
  if (movement == nullptr || mark.reps < 1 || seconds <= 0) return;
  const EffortSpec spec = reading.spec(*movement, domain::Unit::Reps);
  const Constants& all = reading.constants;
  reading.add(
      [spec, seconds, &all](const Body& body) {
        return positive_log(units_within(body, effort_of(spec, body, all), seconds, all));
      },
      base::log(mark.reps), all.marks.timed_reps);
}

void read(const Reading& reading, const domain::BestHold& mark) {
  const domain::Movement* movement = reading.find(mark.movement);
  if (movement == nullptr || mark.time.si() < 1) return;
  const EffortSpec spec = reading.spec(*movement, domain::Unit::Seconds);
  const Constants& all = reading.constants;
  reading.add([spec, &all](const Body& body) { return positive_log(effort_of(spec, body, all).best); },
              base::log(mark.time.si()), all.marks.hold);
}

void read(const Reading& reading, const domain::BestLoad& mark) {
  const domain::Movement* movement = reading.find(mark.movement);
  if (movement == nullptr || mark.load.si() <= 0 || mark.reps < 1) return;
  const EffortSpec spec = reading.spec(*movement, domain::Unit::Reps, mark.load.si());
  if (!spec.strength) return;
  const double single = single_from_set(mark.load.si(), mark.reps);
  const domain::MarkNoise& noise = reading.constants.marks;
  reading.add([spec](const Body& body) { return base::log(best_single(spec, body)); }, base::log(single),
              noise.load + noise.load_rep * (mark.reps - 1),
              {static_cast<Parameter>(index_of(Parameter::SquatLift) + index_of(*spec.strength))});
}

void read(const Reading& reading, const domain::AerobicPeak& mark) {
  if (mark.ml_kg_min <= 0) return;
  reading.add([](const Body& body) { return base::log(body.vo2max); }, base::log(mark.ml_kg_min),
              reading.constants.marks.oxygen);
}

}  // namespace

std::vector<Result> measurements(const std::vector<domain::Mark>& marks, const PullScale& pull,
                                 const domain::Catalogue& catalogue, const Constants& constants) {
  std::vector<Result> out;
  const Reading reading{pull, catalogue, constants, out};
  for (const domain::Mark& mark : marks) std::visit([&](const auto& each) { read(reading, each); }, mark);
  return out;
}

}  // namespace repwright::body
