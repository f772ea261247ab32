#include "rehearsal/summary.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "base/statistics.hpp"

namespace repwright::rehearsal {

namespace {

using domain::PieceOutcome;
using domain::Spread;

// A loss below this share of the time at work holds nobody back: brisk work is what is left.
constexpr double felt = 0.12;

Spread spread_of(const std::vector<double>& sample) {
  if (sample.empty()) return {};
  const base::Summary s = base::summarise(sample);
  return {.mean = s.mean, .sd = s.sd, .p10 = s.p10, .p50 = s.p50, .p90 = s.p90};
}

double mean_seconds(std::int64_t sum, std::int64_t count) {
  return count > 0 ? static_cast<double>(sum) / 1000 / static_cast<double>(count) : 0;
}

struct Where {
  std::size_t piece = 0, person = 0;
};

std::vector<double> scores_of(const RunTable& table, Where at) {
  std::vector<double> scores;
  scores.reserve(table.runs);
  for (std::size_t run = 0; run < table.runs; ++run) {
    const Scored& scored = table.score(at.piece, at.person, run);
    if (scored.took_part) scores.push_back(scored.score);
  }
  return scores;
}

void count_rounds_and_caps(const RunTable& table, Where at, PieceOutcome& outcome) {
  std::vector<double> rounds, reps;
  double took_part = 0;
  for (std::size_t run = 0; run < table.runs; ++run) {
    const Scored& scored = table.score(at.piece, at.person, run);
    if (!scored.took_part) continue;
    ++took_part;
    rounds.push_back(scored.rounds);
    if (scored.capped) reps.push_back(scored.reps);
  }
  const bool in_rounds =
      outcome.reps_per_round > 0 || std::ranges::any_of(rounds, [](double r) { return r > 0; });
  if (in_rounds && !rounds.empty()) outcome.rounds = spread_of(rounds);
  if (took_part > 0) outcome.capped = static_cast<double>(reps.size()) / took_part;
  if (!reps.empty()) outcome.reps_at_cap = spread_of(reps);
}

std::vector<domain::StepTrace> trace_of(const PartSum& part, const Script& script) {
  std::vector<domain::StepTrace> trace;
  for (const LineSum& line : part.lines) {
    const Task& task = script.tasks[static_cast<std::size_t>(line.task)];
    domain::StepTrace& step = trace.emplace_back();
    step.round = line.round;
    step.step = task.step;
    step.version = task.movement;
    if (task.effort.load > 0) step.load_kg = task.effort.load;
    step.start_s = mean_seconds(line.start, line.runs);
    step.end_s = mean_seconds(line.end, line.runs);
    step.work_s = mean_seconds(line.work, line.runs);
    step.rest_s = mean_seconds(line.rest, line.runs);
    step.wait_s = mean_seconds(line.wait, line.runs);
    step.sets = static_cast<double>(line.sets) / static_cast<double>(line.runs);
    step.amount = mean_seconds(line.milliunits, line.runs);
    step.share_of_runs =
        static_cast<double>(line.runs) / static_cast<double>(std::max<std::int64_t>(1, part.runs));
  }
  std::ranges::sort(trace, {}, [](const domain::StepTrace& step) {
    return std::tuple(step.round, step.start_s, step.step, step.end_s);
  });
  return trace;
}

PieceOutcome piece_outcome(const SummaryRequest& request, Where at) {
  const PartSum& part = request.sums.part(static_cast<int>(at.piece), static_cast<int>(at.person));
  const ScriptedPiece& piece = request.request.plan.pieces[at.piece];
  PieceOutcome outcome;
  outcome.piece = piece.piece;
  outcome.measure = request.measures[at.piece][at.person];
  outcome.score = spread_of(scores_of(request.table, at));
  outcome.sd_day = spread_of(scores_of(request.days, at)).sd;
  outcome.reps_per_round = reps_per_round(piece.scripts[at.person]);
  count_rounds_and_caps(request.table, at, outcome);
  for (std::size_t lap = 0; lap < part.lap_ms.size(); ++lap)
    outcome.interval_s.push_back(mean_seconds(part.lap_ms[lap], part.lap_runs[lap]));
  const double runs = static_cast<double>(std::max<std::int64_t>(1, part.runs));
  outcome.demand_share = static_cast<double>(part.demand) / 1e6 / runs;
  outcome.limiter = limiter_of(part.losses);
  outcome.wait_s = mean_seconds(part.queued, part.runs);
  outcome.steps = trace_of(part, piece.scripts[at.person]);
  return outcome;
}

void add_runners(const SummaryRequest& request, Where at, std::vector<domain::RunnerBack>& runners) {
  const PartSum& part = request.sums.part(static_cast<int>(at.piece), static_cast<int>(at.person));
  const ScriptedPiece& piece = request.request.plan.pieces[at.piece];
  for (const LineSum& line : part.lines) {
    if (line.backs.empty()) continue;
    std::vector<double> backs;
    backs.reserve(line.backs.size());
    for (const std::int32_t ms : line.backs) backs.push_back(seconds_of(ms));
    runners.push_back({.piece = piece.piece,
                       .round = line.round,
                       .step = piece.scripts[at.person].tasks[static_cast<std::size_t>(line.task)].step,
                       .person = request.request.cast.ids[at.person],
                       .back_s = spread_of(backs)});
  }
}

bool uses(const FloorPlan& plan, std::size_t person, int place) {
  return std::ranges::any_of(plan.pieces, [&](const ScriptedPiece& piece) {
    return std::ranges::any_of(piece.scripts[person].tasks,
                               [&](const Task& task) { return task.place == place; });
  });
}

domain::PlaceUse place_use(const SummaryRequest& request, std::size_t place) {
  const FloorPlace& kind = request.request.plan.places[place];
  domain::PlaceUse use;
  use.place = kind.equipment;
  use.count = kind.count;
  std::vector<double> waits;
  for (std::size_t p = 0; p < request.table.people; ++p) {
    if (!uses(request.request.plan, p, static_cast<int>(place))) continue;
    for (std::size_t run = 0; run < request.table.runs; ++run)
      waits.push_back(seconds_of(request.table.wait(place, p, run)));
  }
  const Spread spread = spread_of(waits);
  use.wait_mean_s = spread.mean;
  use.wait_p90_s = spread.p90;
  const QueueSum& queue = request.sums.queue(static_cast<int>(place));
  const auto runs = static_cast<double>(request.table.runs);
  use.queue_max_mean = static_cast<double>(queue.longest) / runs;
  double last = 0;
  for (std::size_t bin = 0; bin < queue.waited.size(); ++bin) {
    const double mean = static_cast<double>(queue.waited[bin]) / static_cast<double>(queue_bin) / runs;
    if (mean == last) continue;
    use.queue.emplace_back(seconds_of(static_cast<std::int64_t>(bin) * queue_bin), mean);
    last = mean;
  }
  if (last > 0)
    use.queue.emplace_back(seconds_of(static_cast<std::int64_t>(queue.waited.size()) * queue_bin), 0.0);
  return use;
}

std::string kind_name(timetable::BoxKind kind) {
  switch (kind) {
    case timetable::BoxKind::Briefing:
      return "briefing";
    case timetable::BoxKind::WarmUp:
      return "warm-up";
    case timetable::BoxKind::Work:
      return "work";
    case timetable::BoxKind::Rest:
      return "rest";
    case timetable::BoxKind::Change:
      return "change";
    case timetable::BoxKind::Scores:
      return "scores";
    case timetable::BoxKind::CoolDown:
      return "cool-down";
    case timetable::BoxKind::Clean:
      return "clean";
    case timetable::BoxKind::Note:
      return "note";
  }
  return "note";
}

domain::ClassOutcome class_outcome(const SummaryRequest& request) {
  const timetable::Timetable& timetable = request.request.timetable;
  const RunTable& table = request.table;
  domain::ClassOutcome outcome;
  double start = 0;
  std::vector<double> ends;
  for (std::size_t b = 0; b < table.boxes; ++b) {
    const timetable::Box& box = timetable.boxes[b];
    ends.clear();
    for (std::size_t run = 0; run < table.runs; ++run)
      ends.push_back(seconds_of(table.box_ends[b * table.runs + run]));
    const Spread spread = spread_of(ends);
    domain::BoxOutcome& made = outcome.boxes.emplace_back();
    made.name = box.name;
    made.kind = kind_name(box.kind);
    made.piece = box.piece;
    if (box.planned) made.planned_s = box.planned->si();
    made.start_p50_s = start;
    made.end_p50_s = start = spread.p50;
    made.end_p90_s = spread.p90;
    outcome.p50_s = spread.p50;
    outcome.p90_s = spread.p90;
  }
  if (!timetable.class_length) return outcome;
  outcome.planned_s = timetable.class_length->si();
  const auto over = std::ranges::count_if(ends, [&](double end) { return end > *outcome.planned_s + 0.5; });
  if (!ends.empty()) outcome.over_share = static_cast<double>(over) / static_cast<double>(ends.size());
  return outcome;
}

void add_draws(const SummaryRequest& request, Where at, std::vector<domain::Draw>& draws) {
  const PartSum& part = request.sums.part(static_cast<int>(at.piece), static_cast<int>(at.person));
  const RunTable& table = request.table;
  for (std::size_t run = 0; run < table.runs; ++run) {
    const std::vector<float>& ends = part.ends[run];
    draws.push_back({.person = static_cast<int>(at.person),
                     .piece = request.request.plan.pieces[at.piece].piece,
                     .run = static_cast<int>(run),
                     .score = table.score(at.piece, at.person, run).score,
                     .vo2max = table.vo2max[at.person * table.runs + run],
                     .step_ends_s = std::vector<double>(ends.begin(), ends.end())});
  }
}

}  // namespace

domain::Limiter limiter_of(const Losses& losses) {
  const auto sum = std::accumulate(losses.begin(), losses.end(), std::int64_t{0});
  auto worst = static_cast<std::size_t>(domain::Limiter::Pace);
  std::int64_t most = static_cast<std::int64_t>(felt * static_cast<double>(sum));
  for (std::size_t i = 0; i < limiter_count; ++i) {
    if (i == static_cast<std::size_t>(domain::Limiter::Pace) || losses[i] <= most) continue;
    worst = i;
    most = losses[i];
  }
  return static_cast<domain::Limiter>(worst);
}

domain::Rehearsal summarise(const SummaryRequest& request) {
  const FloorPlan& plan = request.request.plan;
  const Cast& cast = request.request.cast;
  domain::Rehearsal rehearsal;
  rehearsal.seed = request.request.seed.value;
  rehearsal.runs = request.request.runs;
  for (const ScriptedPiece& piece : plan.pieces)
    rehearsal.piece_names.push_back(
        request.request.timetable.pieces[static_cast<std::size_t>(piece.piece)].name);
  for (std::size_t p = 0; p < cast.ids.size(); ++p) {
    domain::PersonOutcome& person = rehearsal.people.emplace_back();
    person.person = cast.ids[p];
    person.name = cast.names[p];
    for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
      const Where at{.piece = piece, .person = p};
      person.pieces.push_back(piece_outcome(request, at));
      add_runners(request, at, rehearsal.runners);
      if (request.request.keep == Keep::Draws) add_draws(request, at, rehearsal.draws);
    }
  }
  for (std::size_t place = 0; place < plan.places.size(); ++place)
    rehearsal.places.push_back(place_use(request, place));
  rehearsal.timetable = class_outcome(request);
  return rehearsal;
}

}  // namespace repwright::rehearsal
