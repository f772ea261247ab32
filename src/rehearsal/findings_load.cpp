#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>

#include "rehearsal/findings.hpp"

/// How full the room gets, and for whom it is much more than lately.
namespace repwright::rehearsal {

namespace {

using domain::Finding;
using domain::FindingKind;
using domain::FindingSeverity;

constexpr double minute = 60;
constexpr double usual_area = 2.4;  // m2 of a floor movement (common practice, no source)
constexpr double full = 1.0;        // of the floor
constexpr double crowded = 0.85;
// Above twice the best of the last four weeks, and by so many that it matters (common practice, no source).
constexpr std::size_t weeks_looked_at = 4;
constexpr double much_more = 2.0;
constexpr std::array<double, body::group_count> more_by{50, 25, 80, 80, 40};  // reps of full stress
/// A movement that lowers slowly or far wears the muscle most; the rest counts a third (judgement).
constexpr double easy_on_muscles = 1.0 / 3;

constexpr std::array<const char*, body::group_count> group_words{"pushing muscles", "pulling muscles", "legs",
                                                                 "trunk", "grip"};

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
  finding.text =
      fmt::format("In minute {} of the class {} people need about {:.0f} m2 at once; the floor has {:.0f}.",
                  busiest - minutes.begin() + 1, busiest->people.size(), busiest->area / minute,
                  request.hall.floor->si());
  finding.people = busiest->people;
}

GroupReps reps_by_group(const FindingRequest& request, std::size_t person) {
  GroupReps reps{};
  for (std::size_t piece = 0; piece < request.plan.pieces.size(); ++piece) {
    const auto& tasks = request.plan.pieces[piece].scripts[person].tasks;
    for (const domain::StepTrace& step : request.rehearsal.people[person].pieces[piece].steps) {
      const auto task = std::ranges::find_if(
          tasks, [&](const Task& t) { return t.step == step.step && t.movement == step.version; });
      if (task == tasks.end() || task->unit != domain::Unit::Reps) continue;
      const domain::Movement* movement = request.catalogue.find(step.version);
      const double stress = movement && movement->eccentric_stress == "low" ? easy_on_muscles : 1;
      reps[body::index_of(task->effort.group)] += stress * step.amount * step.share_of_runs;
    }
  }
  return reps;
}

namespace {

/// The most of the last weeks, muscle by muscle; nothing if no week is known.
std::optional<GroupReps> best_week(const History& history) {
  const auto& weeks = history.weeks;
  if (weeks.empty()) return std::nullopt;
  GroupReps best{};
  for (std::size_t w = weeks.size() - std::min(weeks.size(), weeks_looked_at); w < weeks.size(); ++w)
    for (std::size_t g = 0; g < best.size(); ++g) best[g] = std::max(best[g], weeks[w][g]);
  return best;
}

}  // namespace

void find_jumps_in_load(const FindingRequest& request, std::vector<Finding>& found) {
  std::array<std::vector<std::string>, body::group_count> names;
  std::vector<domain::PersonId> people;
  for (std::size_t p = 0; p < request.history.size(); ++p) {
    const std::optional<GroupReps> best = best_week(request.history[p]);
    if (!best) continue;
    const GroupReps today = reps_by_group(request, p);
    bool any = false;
    for (std::size_t g = 0; g < today.size(); ++g) {
      if (today[g] <= much_more * (*best)[g] || today[g] - (*best)[g] < more_by[g]) continue;
      names[g].push_back(request.rehearsal.people[p].name);
      any = true;
    }
    if (any) people.push_back(request.rehearsal.people[p].person);
  }
  std::string words;
  for (std::size_t g = 0; g < names.size(); ++g)
    if (!names[g].empty())
      words += fmt::format("{}{} of {}", words.empty() ? "" : "; ", group_words[g], some_names(names[g]));
  if (words.empty()) return;
  Finding& finding = found.emplace_back();
  finding.kind = FindingKind::MuchMoreThanLately;
  finding.severity = FindingSeverity::Warning;
  finding.text =
      fmt::format("More than twice the work of any of the last four weeks for {}: cap them today.", words);
  finding.people = people;
}

}  // namespace repwright::rehearsal
