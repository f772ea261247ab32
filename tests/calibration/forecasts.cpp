#include "calibration/forecasts.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

#include "app/parallel.hpp"
#include "body/alone.hpp"
#include "body/day.hpp"
#include "body/dynamics.hpp"
#include "body/effort.hpp"
#include "body/estimate.hpp"
#include "body/knowledge.hpp"

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

/// Two bodies of one pair lie on either side of the middle: their errors of sampling cancel where a score
/// goes straight along with the body.
body::Body drawn_body(const body::BodyEstimate& estimate, std::uint64_t run, std::uint64_t person,
                      const Constants& constants) {
  constexpr base::Seed seed{1};
  body::Normals normals = body::normals_behind(seed, run / 2, person);
  if (run % 2 == 1)
    for (double& z : normals) z = -z;
  body::Body body = body::body_behind(normals, estimate, constants);
  body.knack = body::knack_behind(seed, run, person);
  const body::DayForm form = body::draw_day(seed, run, person);
  body::Body today = body::on_day(body, form);
  today.critical_speed *= form.critical;
  return today;
}

/// The logarithms of a piece, the best first, who cannot do it last and without one.
std::vector<double> in_order(const std::vector<Forecast>& draws, std::size_t piece) {
  const bool counted = piece + 1 == piece_count;
  std::vector<double> logs;
  for (const Forecast& draw : draws)
    if (can_do(draw.at(piece))) logs.push_back(std::log(draw.at(piece)));
  std::ranges::sort(logs);
  if (counted) std::ranges::reverse(logs);
  return logs;
}

}  // namespace

bool can_do(double forecast) {
  return std::isfinite(forecast) && forecast > 0;
}

std::vector<std::vector<Forecast>> drawn_forecasts(const std::vector<Profile>& profiles,
                                                   const domain::Catalogue& catalogue,
                                                   const Constants& constants, std::size_t draws,
                                                   int threads) {
  const AllSpecs men = specs_of(domain::Sex::Male, catalogue, constants);
  const AllSpecs women = specs_of(domain::Sex::Female, catalogue, constants);
  std::vector<std::vector<Forecast>> out(profiles.size());
  app::in_parallel(threads)(static_cast<int>(profiles.size()), [&](int index) {
    const auto i = static_cast<std::size_t>(index);
    const domain::Person& person = profiles[i].person;
    const AllSpecs& specs = person.sex == domain::Sex::Female ? women : men;
    const body::BodyEstimate estimate = body::estimate(person, catalogue, constants);
    const auto key = static_cast<std::uint64_t>(profiles[i].id);
    for (std::uint64_t run = 0; run < draws; ++run)
      out[i].push_back(forecast_of(specs, drawn_body(estimate, run, key, constants), constants));
  });
  return out;
}

Forecast middle_of(const std::vector<Forecast>& draws) {
  Forecast out;
  for (std::size_t piece = 0; piece < piece_count; ++piece) {
    const std::vector<double> logs = in_order(draws, piece);
    const std::size_t first = draws.size() / 4, last = std::min(logs.size(), draws.size() - first);
    double sum = 0;
    for (std::size_t i = first; i < last; ++i) sum += logs[i];
    out.at(piece) = 2 * logs.size() < draws.size() || last <= first
                        ? std::numeric_limits<double>::quiet_NaN()
                        : std::exp(sum / static_cast<double>(last - first));
  }
  return out;
}

std::vector<Forecast> middles_of(const std::vector<std::vector<Forecast>>& drawn) {
  std::vector<Forecast> out;
  out.reserve(drawn.size());
  std::ranges::transform(drawn, std::back_inserter(out), middle_of);
  return out;
}

std::vector<Forecast> forecasts(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                                const Constants& constants, int threads) {
  return middles_of(drawn_forecasts(profiles, catalogue, constants, draws_of_a_forecast, threads));
}

}  // namespace repwright::calibration
