#include "rehearsal/pacing.hpp"

#include <algorithm>

#include "base/math.hpp"
#include "rehearsal/lone_pass.hpp"
#include "rehearsal/luck.hpp"
#include "rehearsal/scoring.hpp"

namespace repwright::rehearsal {

namespace {

constexpr int passes = 4;             // to the fixed point: each brings the error down to a tenth or less
constexpr double first_guess = 2700;  // s
constexpr double nudge = 0.05;        // in the logarithm
constexpr double steepest = 2;        // of an elasticity; a body on the edge of what it can do has no slope
constexpr std::array<double, 4> no_change{};

double log_ratio(double a, double b) {
  return base::log(a / b);
}

double mean_set(const body::Body& body, const body::Body& middle) {
  double sum = 0;
  int groups = 0;
  for (std::size_t g = 0; g < body::group_count; ++g) {
    if (body.best_set[g] <= 1 || middle.best_set[g] <= 1) continue;
    sum += log_ratio(body.best_set[g], middle.best_set[g]);
    ++groups;
  }
  return groups > 0 ? sum / groups : 0;
}

body::Body changed(body::Body body, const std::array<double, 4>& logs) {
  body.critical_speed *= base::exp(logs[0]);
  for (double& best : body.best_set)
    if (best > 1) best *= base::exp(logs[1]);
  body.cadence *= base::exp(logs[2]);
  body.recovery *= base::exp(logs[3]);
  return body;
}

std::vector<std::vector<double>> activity(const Floor& floor) {
  std::vector<std::vector<double>> seconds;
  for (const auto& piece : floor.results()) {
    auto& row = seconds.emplace_back();
    for (const PieceResult& result : piece) row.push_back(std::max(1.0, seconds_of(result.active)));
  }
  return seconds;
}

struct Size {
  std::size_t pieces = 0, people = 0;
};

/// Plays until everybody spreads their reserve over about the activity that comes of it. `recorder` is told
/// of the last time; it may be null.
void settle(Floor& floor, RunSetting& setting, Size size, Recorder* recorder) {
  setting.targets.assign(size.pieces, std::vector<double>(size.people, first_guess));
  for (int pass = 0; pass < passes; ++pass) {
    floor.play(setting, pass + 1 == passes ? recorder : nullptr);
    setting.targets = activity(floor);
  }
}

/// Writes down who was at which place, and how long they waited for it.
class PlaceBook final : public Recorder {
 public:
  explicit PlaceBook(const FloorPlan& plan)
      : plan_(plan),
        people_(plan.late.size()),
        places_(plan.places.size()),
        visits_(plan.pieces.size() * people_ * places_) {}

  void worked(Part part, const Stint& stint, const Player& player) override {
    const int place = player.script->tasks[static_cast<std::size_t>(stint.task)].place;
    if (place < 0) return;
    Visits& visits = at(part, static_cast<std::size_t>(place));
    ++visits.lines;
    visits.waited += stint.wait;
  }
  void queued(int, int, std::int64_t, std::int64_t) override {}
  void queue_length(int, int) override {}
  void lap(Part, int, std::int64_t) override {}

  std::vector<AtPlace> of(Part part) const {
    std::vector<AtPlace> all;
    for (std::size_t place = 0; place < places_; ++place)
      if (const Visits& visits = visits_[index(part, place)]; visits.lines > 0)
        all.push_back({plan_.places[place].equipment, visits.lines, seconds_of(visits.waited)});
    return all;
  }

 private:
  struct Visits {
    int lines = 0;
    std::int64_t waited = 0;
  };
  std::size_t index(Part part, std::size_t place) const {
    const auto row = static_cast<std::size_t>(part.piece) * people_ + static_cast<std::size_t>(part.person);
    return row * places_ + place;
  }
  Visits& at(Part part, std::size_t place) { return visits_[index(part, place)]; }

  const FloorPlan& plan_;
  std::size_t people_, places_;
  std::vector<Visits> visits_;
};

MiddlingParts parts_of(const Floor& floor, const FloorPlan& plan, const timetable::Timetable& timetable,
                       const PlaceBook& book) {
  MiddlingParts parts(plan.pieces.size());
  for (std::size_t i = 0; i < parts.size(); ++i)
    for (std::size_t p = 0; p < plan.late.size(); ++p) {
      const PieceResult& result = floor.results()[i][p];
      const Script& script = plan.pieces[i].scripts[p];
      const bool open = !timetable.pieces[static_cast<std::size_t>(plan.pieces[i].piece)].length.has_value();
      const double per_round = reps_per_round(script);
      const double done = result.counts.reps + result.counts.kcal;
      parts[i].push_back({.score = score_of(script, result, measure_of(script, open)).score,
                          .seconds = seconds_of(result.home - result.zero),
                          .rounds = per_round > 0 ? done / per_round : result.rounds,
                          .longest_lap_s = result.laps > 0 ? seconds_of(result.lap_longest) : 0,
                          .laps = result.laps,
                          .finished = !result.capped,
                          .active_s = std::max(1.0, seconds_of(result.active)),
                          .places = book.of({static_cast<int>(p), static_cast<int>(i)})});
    }
  return parts;
}

}  // namespace

MiddlingParts lone_pass(const FloorPlan& plan, const timetable::Timetable& timetable,
                        const body::Constants& constants, const Cast& cast) {
  Floor floor(plan, timetable, constants, Crowd::Alone);
  RunSetting setting = even_day(cast, timetable);
  PlaceBook book(plan);
  settle(floor, setting, {plan.pieces.size(), cast.median.size()}, &book);
  return parts_of(floor, plan, timetable, book);
}

MiddlingParts crowd_pass(const FloorPlan& plan, const timetable::Timetable& timetable,
                         const body::Constants& constants, const Cast& cast,
                         const std::vector<std::vector<double>>& paces) {
  Floor floor(plan, timetable, constants, Crowd::Shared);
  RunSetting setting = even_day(cast, timetable);
  setting.targets = paces;
  PlaceBook book(plan);
  floor.play(setting, &book);
  return parts_of(floor, plan, timetable, book);
}

Expectations expect(const FloorPlan& plan, const timetable::Timetable& timetable,
                    const body::Constants& constants, const Cast& cast) {
  Floor floor(plan, timetable, constants, Crowd::Alone);
  RunSetting setting = even_day(cast, timetable);
  settle(floor, setting, {plan.pieces.size(), cast.median.size()}, nullptr);
  Expectations expectations(plan.pieces.size());
  for (std::size_t i = 0; i < plan.pieces.size(); ++i)
    for (const double seconds : setting.targets[i]) expectations[i].push_back({.seconds = seconds});
  for (std::size_t k = 0; k < no_change.size(); ++k) {
    std::array<double, 4> logs = no_change;
    logs[k] = nudge;
    for (std::size_t p = 0; p < cast.median.size(); ++p) setting.bodies[p] = changed(cast.median[p], logs);
    floor.play(setting, nullptr);
    const auto seconds = activity(floor);
    for (std::size_t i = 0; i < seconds.size(); ++i)
      for (std::size_t p = 0; p < seconds[i].size(); ++p)
        expectations[i][p].elasticity[k] =
            std::clamp(log_ratio(seconds[i][p], setting.targets[i][p]) / nudge, -steepest, steepest);
  }
  return expectations;
}

void set_targets(RunSetting& setting, const Expectations& expectations, const Cast& cast) {
  setting.targets.resize(expectations.size());
  for (auto& row : setting.targets) row.resize(cast.median.size());
  for (std::size_t p = 0; p < cast.median.size(); ++p) {
    const body::Body& body = setting.bodies[p];
    const body::Body& middle = cast.median[p];
    const double speed = log_ratio(body.critical_speed, middle.critical_speed) +
                         log_ratio(setting.critical_factor[p], cast.conditions);
    const std::array<double, 4> logs{speed, mean_set(body, middle), log_ratio(body.cadence, middle.cadence),
                                     log_ratio(body.recovery, middle.recovery)};
    for (std::size_t i = 0; i < expectations.size(); ++i) {
      const Expectation& expectation = expectations[i][p];
      double log = 0;
      for (std::size_t k = 0; k < logs.size(); ++k) log += expectation.elasticity[k] * logs[k];
      setting.targets[i][p] = expectation.seconds * base::exp(log);
    }
  }
}

}  // namespace repwright::rehearsal
