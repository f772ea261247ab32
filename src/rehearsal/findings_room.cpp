#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

#include "rehearsal/findings.hpp"

/// Whether the hall holds who comes: its floor, and its places.
namespace repwright::rehearsal {

namespace {

using domain::Finding;
using domain::FindingKind;
using domain::FindingSeverity;

constexpr double minute = 60;
constexpr double usual_area = 2.4;  // m2 of a floor movement (common practice, no source)
constexpr double full = 1.0;        // of the floor
constexpr double crowded = 0.85;
// So much over the floor, or so much of their time in a queue, and nobody would hold the class (a judgement).
constexpr double far_over = 1.5;
constexpr double most_waiting = 0.5;

constexpr std::string_view of_little_use = "; what follows is of little use for so many.";

/// When a piece starts, seconds of the class, in the middle of the runs.
double start_of(const FindingRequest& request, int piece) {
  const auto& boxes = request.timetable.boxes;
  const auto box = std::ranges::find_if(boxes, [&](const timetable::Box& b) { return b.piece == piece; });
  if (box == boxes.end()) return 0;
  return request.rehearsal.timetable.boxes[static_cast<std::size_t>(box - boxes.begin())].start_p50_s;
}

struct Busy {
  double area = 0;  // m2 x s within the minute
  std::vector<domain::PersonId> people;
};

bool outdoors(const Script& script, domain::StepId step) {
  return std::ranges::any_of(script.tasks, [&](const Task& t) { return t.step == step && t.outdoors; });
}

/// Seconds of the class during which somebody needs so much floor.
struct Need {
  domain::PersonId person;
  double start = 0, end = 0, area = 0;
};

std::vector<Need> needs_of(const FindingRequest& request, std::size_t piece) {
  std::vector<Need> needs;
  const double start = start_of(request, request.plan.pieces[piece].piece);
  for (const Seen& seen : outcomes_of(request.rehearsal, piece)) {
    const Script& script = request.plan.pieces[piece].scripts[seen.index];
    for (const domain::StepTrace& step : seen.outcome->steps) {
      if (outdoors(script, step.step)) continue;
      const domain::Movement* movement = request.catalogue.find(step.version);
      const double area = movement ? movement->space.si() : usual_area;
      needs.push_back({.person = seen.person->person,
                       .start = start + step.start_s,
                       .end = start + step.end_s,
                       .area = area * step.share_of_runs});
    }
  }
  return needs;
}

void book(const Need& need, std::vector<Busy>& minutes) {
  for (double at = need.start; at < need.end;) {
    const auto m = static_cast<std::size_t>(at / minute);
    const double until = std::min(need.end, static_cast<double>(m + 1) * minute);
    if (minutes.size() <= m) minutes.resize(m + 1);
    minutes[m].area += need.area * (until - at);
    if (minutes[m].people.empty() || minutes[m].people.back() != need.person)
      minutes[m].people.push_back(need.person);
    at = until;
  }
}

std::vector<Busy> busy_minutes(const FindingRequest& request) {
  std::vector<Busy> minutes;
  for (std::size_t piece = 0; piece < request.plan.pieces.size(); ++piece)
    for (const Need& need : needs_of(request, piece)) book(need, minutes);
  return minutes;
}

/// That nobody should trust the rest, the first time that it must be said.
std::string of_little_use_once(const std::vector<Finding>& found) {
  const bool said =
      std::ranges::any_of(found, [](const Finding& one) { return one.text.ends_with(of_little_use); });
  return std::string(said ? "." : of_little_use);
}

/// Where the time of those goes who need a kind of place in a piece, s of all of them.
struct AtPlaces {
  double there = 0, elsewhere = 0, waiting = 0;
  std::vector<domain::PersonId> people;
};

AtPlaces at_places(const FindingRequest& request, std::size_t piece, const domain::EquipmentId& place) {
  AtPlaces all;
  for (const Seen& seen : outcomes_of(request.rehearsal, piece)) {
    const Script& script = request.plan.pieces[piece].scripts[seen.index];
    AtPlaces own;
    bool any = false;
    for (const domain::StepTrace& step : seen.outcome->steps) {
      const bool there = needs_place(request.plan, script, step.step, place);
      any = any || there;
      (there ? own.there : own.elsewhere) += (step.work_s + step.rest_s) * step.share_of_runs;
      if (there) own.waiting += step.wait_s * step.share_of_runs;
    }
    if (!any) continue;
    all.there += own.there;
    all.elsewhere += own.elsewhere;
    all.waiting += own.waiting;
    all.people.push_back(seen.person->person);
  }
  return all;
}

}  // namespace

void find_crowding(const FindingRequest& request, std::vector<Finding>& found) {
  if (!request.hall.floor) return;
  const std::vector<Busy> minutes = busy_minutes(request);
  const auto busiest = std::ranges::max_element(minutes, {}, &Busy::area);
  if (busiest == minutes.end()) return;
  const double share = busiest->area / minute / request.hall.floor->si();
  if (share < crowded) return;
  Finding& finding = found.emplace_back();
  finding.kind = FindingKind::HallTooFull;
  finding.severity = share < full ? FindingSeverity::Warning : FindingSeverity::Problem;
  const auto people = static_cast<double>(busiest->people.size());
  finding.text =
      fmt::format("In minute {} of the class {} people need about {:.0f} m2 at once; the floor has {:.0f}",
                  busiest - minutes.begin() + 1, people, busiest->area / minute, request.hall.floor->si());
  if (share >= full)
    finding.text += fmt::format(", room for about {:.0f} of them", std::floor(people / share));
  finding.text += share >= far_over ? of_little_use_once(found) : ".";
  finding.people = busiest->people;
}

void find_too_few_places(const FindingRequest& request, std::vector<Finding>& found) {
  for (std::size_t piece = 0; piece < request.plan.pieces.size(); ++piece)
    for (const domain::PlaceUse& use : request.rehearsal.places) {
      const AtPlaces at = at_places(request, piece, use.place);
      const double at_work = at.there + at.elsewhere;
      const double waiting = at.waiting / std::max(1.0, at_work + at.waiting);
      if (at.there <= 0 || waiting < most_waiting) continue;
      // With more people than this at once somebody always waits: the saturation point of a closed queue,
      // places x (time there + time elsewhere) / time there.
      const double hold = std::max(1.0, std::floor(use.count * at_work / at.there));
      Finding& finding = found.emplace_back();
      finding.kind = FindingKind::HallTooFull;
      finding.severity = FindingSeverity::Problem;
      finding.text = fmt::format(
          "{} x {} {} enough for about {:.0f} {} at once in {}, and {} come to {}: they would wait for "
          "{:.0f} % of it{}",
          use.count, place_name(use, request.catalogue), use.count == 1 ? "is" : "are", hold,
          hold == 1 ? "person" : "people", request.rehearsal.piece_names[piece], at.people.size(),
          use.count == 1 ? "it" : "them", 100 * waiting, of_little_use_once(found));
      finding.people = at.people;
    }
}

}  // namespace repwright::rehearsal
