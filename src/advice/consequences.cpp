#include "advice/consequences.hpp"

#include <algorithm>
#include <vector>

namespace repwright::advice {
namespace {

// What counts as much as one minute of standing about, each a judgement of ours (docs/decisions/repairs.md).
constexpr double minutes_of_unfinished = 3;  // one person stopped by the cap
constexpr double minutes_of_over = 5;        // a class that surely runs over
constexpr double minutes_of_lost_work = 10;  // all of the work dropped

double middle(std::vector<double> values) {
  if (values.empty()) return 0;
  const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, half);
  return *half;
}

}  // namespace

domain::Consequences consequences_of(const domain::Rehearsal& rehearsal) {
  domain::Consequences out;
  double waited = 0, worked = 0, stopped = 0;
  int pieces = 0;
  std::vector<double> finishes;
  for (const domain::PersonOutcome& person : rehearsal.people) {
    double finish = 0;
    for (const domain::PieceOutcome& piece : person.pieces) {
      ++pieces;
      waited += piece.wait_s;
      stopped += piece.capped;
      for (const domain::StepTrace& step : piece.steps) worked += step.work_s * step.share_of_runs;
      if (piece.measure == domain::Measure::Seconds) finish += piece.score.p50;
    }
    if (finish > 0) finishes.push_back(finish);
  }
  const double people = std::max<double>(1, static_cast<double>(rehearsal.people.size()));
  out.wait_s = waited / people;
  out.work_s = worked / people;
  out.finished = pieces > 0 ? 1 - stopped / pieces : 1;
  out.median_finish_s = middle(std::move(finishes));
  const domain::ClassOutcome& hour = rehearsal.timetable;
  out.over_share = hour.over_share;
  out.end_p50_s = hour.p50_s;
  out.end_p90_s = hour.p90_s;
  if (hour.planned_s) out.over_s = std::max(0.0, hour.p90_s - *hour.planned_s);
  return out;
}

double burden(const domain::Consequences& consequences, double asked_work_s) {
  const double lost = asked_work_s > 0 ? std::max(0.0, 1 - consequences.work_s / asked_work_s) : 0;
  return consequences.wait_s / 60 + minutes_of_unfinished * (1 - consequences.finished) +
         minutes_of_over * consequences.over_share + consequences.over_s / 60 + minutes_of_lost_work * lost;
}

}  // namespace repwright::advice
