#include <fmt/format.h>
#include <algorithm>
#include <cmath>

#include "rehearsal/findings.hpp"

/// Where people stand and wait.
namespace repwright::rehearsal {

namespace {

using domain::Finding;
using domain::FindingKind;
using domain::FindingSeverity;

// A tenth of the class waiting so long is seen by everybody; three times as much spoils the piece
// (common practice, no source).
constexpr double worth_saying_s = 20;
constexpr double spoils_s = 60;
// Runners a leg behind the middle of the class: the coach stands alone with them (common practice, no
// source).
constexpr double late_share = 0.5;
constexpr double late_s = 60;

/// The line that is waited for most, and who waits for it long.
struct Waiters {
  std::optional<domain::StepId> step;
  double longest = 0;
  std::vector<domain::PersonId> people;
};

void add_waits(const FindingRequest& request, std::size_t piece, const domain::EquipmentId& place,
               Waiters& waiters) {
  for (const Seen& seen : outcomes_of(request.rehearsal, piece)) {
    double waited = 0;
    for (const domain::StepTrace& step : seen.outcome->steps) {
      if (!needs_place(request.plan, request.plan.pieces[piece].scripts[seen.index], step.step, place))
        continue;
      waited += step.wait_s * step.share_of_runs;
      if (step.wait_s <= waiters.longest) continue;
      waiters.longest = step.wait_s;
      waiters.step = step.step;
    }
    if (waited >= worth_saying_s) waiters.people.push_back(seen.person->person);
  }
}

Waiters waiters_of(const FindingRequest& request, const domain::EquipmentId& place) {
  Waiters waiters;
  for (std::size_t piece = 0; piece < request.plan.pieces.size(); ++piece)
    add_waits(request, piece, place, waiters);
  return waiters;
}

}  // namespace

void find_queues(const FindingRequest& request, std::vector<Finding>& found) {
  for (const domain::PlaceUse& use : request.rehearsal.places) {
    if (use.wait_p90_s < worth_saying_s || use.queue.empty()) continue;
    const auto worst = std::ranges::max_element(use.queue, {}, &std::pair<double, double>::second);
    const Waiters waiters = waiters_of(request, use.place);
    Finding& finding = found.emplace_back();
    finding.kind = FindingKind::Queue;
    finding.severity = use.wait_p90_s < spoils_s ? FindingSeverity::Warning : FindingSeverity::Problem;
    finding.text = fmt::format(
        "{} x {}: a queue of up to {:.0f}, worst at {} of the class; one in ten waits {} or more in all.",
        use.count, place_name(use, request.catalogue), std::ceil(use.queue_max_mean),
        clock_words(worst->first), clock_words(use.wait_p90_s));
    finding.step = waiters.step;
    finding.people = waiters.people;
  }
}

void find_late_runners(const FindingRequest& request, std::vector<Finding>& found) {
  const auto& runners = request.rehearsal.runners;
  for (auto first = runners.begin(); first != runners.end(); ++first) {
    const auto same = [&](const domain::RunnerBack& r) {
      return r.piece == first->piece && r.step == first->step && r.round == first->round;
    };
    if (std::find_if(runners.begin(), first, same) != first) continue;
    std::vector<const domain::RunnerBack*> leg;
    for (const auto& runner : runners)
      if (same(runner)) leg.push_back(&runner);
    if (leg.size() < 3) continue;
    std::ranges::sort(leg, {}, [](const auto* r) { return r->back_s.p50; });
    const double middle = leg[leg.size() / 2]->back_s.p50;
    const domain::RunnerBack& last = *leg.back();
    const double behind = last.back_s.p50 - middle;
    if (behind < std::max(late_s, late_share * middle)) continue;
    const auto person =
        std::ranges::find(request.rehearsal.people, last.person, &domain::PersonOutcome::person);
    Finding& finding = found.emplace_back();
    finding.kind = FindingKind::LastRunnerLate;
    finding.severity = FindingSeverity::Warning;
    const auto& names = request.rehearsal.piece_names;
    const std::string where =
        names.size() > 1 ? " in " + names[static_cast<std::size_t>(last.piece)] : std::string();
    finding.text = fmt::format("{} comes back from the run{} at about {}, {} after the middle of the class.",
                               person->name, where, clock_words(last.back_s.p50), clock_words(behind));
    finding.step = last.step;
    finding.people = {last.person};
  }
}

}  // namespace repwright::rehearsal
