#include "calibration/forecasts.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

#include "app/parallel.hpp"
#include "body/alone.hpp"
#include "body/day.hpp"
#include "body/dynamics.hpp"
#include "body/effort.hpp"
#include "body/estimate.hpp"

namespace repwright::calibration {

namespace {

using body::Constants;
using domain::Unit;

/// One line of a piece as written: so much of a movement, the load for men and for women.
struct Line {
  const char* movement;
  double amount;
  std::array<double, 2> load{};
  Unit unit = Unit::Reps;
};

constexpr double to_bell = std::numeric_limits<double>::infinity();

// The pieces of the data's own description, loads in kg.
const std::vector<Line> piece1{
    {"run", 400, {}, Unit::Metres}, {"kb-swing", 21, {24, 16}}, {"kip-pull-up", 12}};
const std::vector<Line> piece2{{"bb-squat-press", 21, {43, 29.5}}, {"kip-pull-up", 21},
                               {"bb-squat-press", 15, {43, 29.5}}, {"kip-pull-up", 15},
                               {"bb-squat-press", 9, {43, 29.5}},  {"kip-pull-up", 9}};
const std::vector<Line> piece3{{"bb-clean-and-jerk", 30, {61, 43}}};
const std::vector<Line> piece4{
    {"box-jump", 50},       {"jumping-pull-up", 50},      {"kb-swing", 50, {16, 12}},
    {"walking-lunge", 50},  {"knees-to-elbows", 50},      {"bb-push-press", 50, {20, 16}},
    {"back-extension", 50}, {"mb-wall-shot", 50, {9, 6}}, {"burpee", 50},
    {"double-under", 50}};
const std::vector<Line> piece5{{"mb-wall-shot", to_bell, {9, 6}},
                               {"bb-high-pull", to_bell, {34, 25}},
                               {"box-jump", to_bell},
                               {"bb-push-press", to_bell, {34, 25}},
                               {"rower", to_bell, {}, Unit::Kilocalories}};

struct SpecLine {
  body::EffortSpec spec;
  double amount;
};
using Specs = std::vector<SpecLine>;
using AllSpecs = std::array<Specs, piece_count>;

AllSpecs specs_of(domain::Sex sex, const domain::Catalogue& catalogue, const Constants& constants) {
  const std::array<const std::vector<Line>*, piece_count> pieces{&piece1, &piece2, &piece3, &piece4, &piece5};
  AllSpecs out;
  for (std::size_t p = 0; p < piece_count; ++p)
    for (const Line& line : *pieces.at(p)) {
      const domain::Movement* movement = catalogue.find(domain::MovementId{line.movement});
      const double load = line.load.at(sex == domain::Sex::Female ? 1 : 0);
      out.at(p).push_back({body::effort_spec(*movement, line.unit, load, constants), line.amount});
    }
  return out;
}

/// From the bar to the door takes twice as long as from one thing to the next on the spot.
std::vector<body::Task> tasks_of(const Specs& specs, const body::Body& body, const Constants& constants) {
  std::vector<body::Task> out;
  for (const SpecLine& line : specs)
    out.push_back({body::effort_of(line.spec, body, constants), line.amount,
                   body.transition * (line.spec.kind == body::Effort::Kind::Run ? 2 : 1)});
  return out;
}

double seconds_of(std::vector<body::Task> tasks, double rounds, const body::Body& body,
                  const Constants& constants) {
  body::Piece piece;
  piece.round = std::move(tasks);
  piece.rounds = rounds;
  const body::AloneDone done = body::alone_at_best(body, piece, 600, constants);
  return done.finished || done.round_ends.size() >= static_cast<std::size_t>(rounds)
             ? done.seconds
             : std::numeric_limits<double>::quiet_NaN();
}

/// A minute at each of the stations, the way to it within the minute, three times with a minute of rest.
double count_of_minutes(const std::vector<body::Task>& stations, const body::Body& body,
                        const Constants& constants) {
  const body::Pacing pacing = body::pace_for(1020, 1020);
  body::State state = body::fresh(body, 1, constants);
  double units = 0;
  for (int round = 0; round < 3; ++round) {
    for (const body::Task& station : stations) {
      body::rest(state, body, body.transition, constants);
      body::Piece minute;
      minute.round = {{.effort = station.effort, .amount = to_bell}};
      minute.bell = 60 - body.transition;
      units += std::floor(body::alone(state, body, minute, pacing, constants).units);
    }
    body::rest(state, body, 60, constants);
  }
  return units;
}

Forecast forecast_of(const AllSpecs& specs, const body::Body& body, const Constants& constants) {
  const auto tasks = [&](std::size_t p) { return tasks_of(specs.at(p), body, constants); };
  return {seconds_of(tasks(0), 3, body, constants), seconds_of(tasks(1), 1, body, constants),
          seconds_of(tasks(2), 1, body, constants), seconds_of(tasks(3), 1, body, constants),
          count_of_minutes(tasks(4), body, constants)};
}

using BodyOf = std::function<body::Body(const body::BodyEstimate&, std::uint64_t person)>;

std::vector<Forecast> forecasts_by(const BodyOf& body_of, const std::vector<Profile>& profiles,
                                   const domain::Catalogue& catalogue, const Constants& constants,
                                   int threads) {
  const AllSpecs men = specs_of(domain::Sex::Male, catalogue, constants);
  const AllSpecs women = specs_of(domain::Sex::Female, catalogue, constants);
  std::vector<Forecast> out(profiles.size());
  app::in_parallel(threads)(static_cast<int>(profiles.size()), [&](int index) {
    const auto i = static_cast<std::size_t>(index);
    const domain::Person& person = profiles[i].person;
    const body::Body body = body_of(body::estimate(person, catalogue, constants), i);
    out[i] = forecast_of(person.sex == domain::Sex::Female ? women : men, body, constants);
  });
  return out;
}

}  // namespace

std::vector<Forecast> forecasts(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                                const Constants& constants, int threads) {
  const BodyOf middle = [&](const body::BodyEstimate& estimate, std::uint64_t) {
    return body::median(estimate, constants);
  };
  return forecasts_by(middle, profiles, catalogue, constants, threads);
}

std::vector<Forecast> drawn_forecasts(const std::vector<Profile>& profiles,
                                      const domain::Catalogue& catalogue, const Constants& constants,
                                      std::uint64_t run) {
  const BodyOf drawn = [&](const body::BodyEstimate& estimate, std::uint64_t person) {
    const body::DayForm form = body::draw_day({1}, run, person);
    body::Body today = body::on_day(body::draw(estimate, {1}, run, person, constants), form);
    today.critical_speed *= form.critical;
    return today;
  };
  return forecasts_by(drawn, profiles, catalogue, constants, 0);
}

}  // namespace repwright::calibration
