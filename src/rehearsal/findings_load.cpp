#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>

#include "rehearsal/findings.hpp"

/// For whom a class is much more than lately.
namespace repwright::rehearsal {

namespace {

using domain::Finding;
using domain::FindingKind;
using domain::FindingSeverity;

// Above twice the best of the last four weeks, and by so many that it matters (common practice, no source).
constexpr std::size_t weeks_looked_at = 4;
constexpr double much_more = 2.0;
constexpr std::array<double, body::group_count> more_by{50, 25, 80, 80, 40};  // reps of full stress
/// A movement that lowers slowly or far wears the muscle most; the rest counts a third (judgement).
constexpr double easy_on_muscles = 1.0 / 3;

constexpr std::array<const char*, body::group_count> group_words{"pushing muscles", "pulling muscles", "legs",
                                                                 "trunk", "grip"};

}  // namespace

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
