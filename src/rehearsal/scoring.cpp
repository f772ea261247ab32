#include "rehearsal/scoring.hpp"

#include <algorithm>
#include <cmath>

namespace repwright::rehearsal {

namespace {

using domain::Measure;
using domain::Score;

/// The unit of most of what the script counts.
Measure counted_in(const Script& script) {
  for (const Op& op : script.ops) {
    if (op.task < 0) continue;
    const Task& task = script.tasks[static_cast<std::size_t>(op.task)];
    if (!task.counted) continue;
    if (task.unit == domain::Unit::Metres) return Measure::Metres;
    if (task.unit == domain::Unit::Kilocalories) return Measure::Kilocalories;
    return Measure::Reps;
  }
  return Measure::Reps;
}

double seconds(std::int64_t ms) {
  return static_cast<double>(ms) / 1000;
}

double count_in(const Counts& counts, Measure measure) {
  switch (measure) {
    case Measure::Metres:
      return counts.metres;
    case Measure::Kilocalories:
      return counts.kcal;
    default:
      return counts.reps + counts.kcal;  // a kilocalorie counts as a rep (common practice, no source)
  }
}

double interval_score(const Script& script, const PieceResult& result) {
  const bool laps = result.laps > 0;
  switch (script.score) {
    case Score::Times:
      return seconds(laps ? result.lap_sum : result.home - result.zero);
    case Score::MaxTime:
      return seconds(laps ? result.lap_longest : result.home - result.zero);
    case Score::MinTime:
      return seconds(laps ? result.lap_shortest : result.home - result.zero);
    case Score::MinInterval:
      return laps ? result.lap_least : 0;
    default:
      return laps ? result.lap_most : 0;
  }
}

}  // namespace

double reps_per_round(const Script& script) {
  double all = 0;
  for (std::size_t end = 0; end < script.ops.size(); ++end) {
    const Op& jump = script.ops[end];
    if (jump.kind != OpKind::Jump || jump.target < 0 || static_cast<std::size_t>(jump.target) >= end)
      continue;
    double round = 0;
    int rounds = 0;
    for (std::size_t at = static_cast<std::size_t>(jump.target); at < end; ++at) {
      const Op& op = script.ops[at];
      if (op.kind == OpKind::RoundDone) ++rounds;
      if (op.kind != OpKind::Work && op.kind != OpKind::Pool) continue;
      const Task& task = script.tasks[static_cast<std::size_t>(op.task)];
      if (task.counted) round += op.amount / task.score_factor;
    }
    if (rounds != 1 || (all > 0 && round != all)) return 0;
    all = round;
  }
  return std::isfinite(all) ? all : 0;
}

Measure measure_of(const Script& script, bool open) {
  switch (script.score) {
    case Score::Time:
    case Score::Times:
    case Score::MaxTime:
    case Score::MinTime:
    case Score::Place:
      return Measure::Seconds;
    case Score::Kcal:
    case Score::KcalSum:
      return Measure::Kilocalories;
    case Score::Distance:
    case Score::DistanceSum:
      return Measure::Metres;
    case Score::Load:
      return Measure::Kilograms;
    case Score::MinInterval:
    case Score::MaxInterval:
      return counted_in(script);
    case Score::None:
      return open ? Measure::Seconds : counted_in(script);
    default:
      return Measure::Reps;
  }
}

Scored score_of(const Script& script, const PieceResult& result, Measure measure) {
  Scored scored{.reps = result.counts.reps + result.counts.kcal,
                .rounds = result.rounds,
                .took_part = result.took_part};
  switch (script.score) {
    case Score::Times:
    case Score::MaxTime:
    case Score::MinTime:
    case Score::MinInterval:
    case Score::MaxInterval:
      scored.score = interval_score(script, result);
      break;
    case Score::Load:
      scored.score = script.load_best;
      break;
    case Score::LastFullMinute:
      scored.score = result.full_laps;
      break;
    default:
      scored.score =
          measure == Measure::Seconds ? seconds(result.home - result.zero) : count_in(result.counts, measure);
  }
  scored.capped = result.capped && measure == Measure::Seconds && script.score != Score::Times;
  return scored;
}

}  // namespace repwright::rehearsal
