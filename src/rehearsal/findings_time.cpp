#include <fmt/format.h>
#include <algorithm>
#include <iterator>
#include <map>

#include "rehearsal/findings.hpp"
#include "rehearsal/floor.hpp"

/// Who runs out of time, and whether the class does.
namespace repwright::rehearsal {

namespace {

using domain::Finding;
using domain::FindingKind;
using domain::FindingSeverity;

constexpr double mostly = 0.5;       // share of runs
constexpr double not_rarely = 0.1;   // share of runs
constexpr double a_third = 1.0 / 3;  // of the class
constexpr double uneven_s = 120;     // between the middles of two heats

Finding& add(std::vector<Finding>& found, FindingKind kind, FindingSeverity severity, std::string text) {
  Finding& finding = found.emplace_back();
  finding.kind = kind;
  finding.severity = severity;
  finding.text = std::move(text);
  return finding;
}

std::string name_of(const FindingRequest& request, std::size_t piece) {
  const std::string& name = request.rehearsal.piece_names[piece];
  return name.empty() ? "the piece" : name;
}

/// Neither a cap nor a length: only the guard of the floor ends it.
bool open_ended(const FindingRequest& request, std::size_t piece) {
  const timetable::Piece& when =
      request.timetable.pieces[static_cast<std::size_t>(request.plan.pieces[piece].piece)];
  return !when.cap && !when.length;
}

/// The line that somebody is at when they are taken out; null if nothing was begun.
const domain::StepTrace* last_line(const domain::PieceOutcome& outcome) {
  const auto last = std::ranges::max_element(outcome.steps, {}, &domain::StepTrace::end_s);
  return last == outcome.steps.end() ? nullptr : &*last;
}

/// Who does not come to the end of a piece without a cap, and where the one is stuck to whom it happens most.
void find_endless(const FindingRequest& request, std::size_t piece, const std::vector<Seen>& stuck,
                  std::vector<Finding>& found) {
  std::vector<std::string> names;
  names.reserve(stuck.size());
  for (const Seen& one : stuck) names.push_back(one.person->name);
  const bool all = std::ranges::count_if(stuck, [](const Seen& s) { return s.outcome->capped > 0.9; }) ==
                   std::ssize(request.rehearsal.people);
  const Seen& worst = *std::ranges::max_element(stuck, {}, [](const Seen& s) { return s.outcome->capped; });
  std::string text = fmt::format(
      "{} {} not come to the end of {}, which has no cap, in up to {:.0f} of 100 rehearsals: taken "
      "out after {} hours",
      some_names(names), names.size() == 1 ? "does" : "do", name_of(request, piece),
      100 * worst.outcome->capped, longest_piece / 3600);
  const domain::StepTrace* line = last_line(*worst.outcome);
  if (line) {
    const domain::Movement* movement = request.catalogue.find(line->version);
    const bool rests = line->rest_s > line->work_s;
    text += fmt::format(", {} at {}", rests ? "mostly at rest" : "still at work",
                        movement ? movement->name : "a line of free text");
  }
  Finding& finding = add(found, all ? FindingKind::NobodyFinishes : FindingKind::OverCap,
                         FindingSeverity::Problem, text + ".");
  if (line) finding.step = line->step;
  for (const Seen& one : stuck) finding.people.push_back(one.person->person);
}

void find_caps(const FindingRequest& request, std::size_t piece, std::vector<Finding>& found) {
  const std::vector<Seen> seen = outcomes_of(request.rehearsal, piece);
  const bool endless = open_ended(request, piece);
  std::vector<Seen> late;
  std::ranges::copy_if(seen, std::back_inserter(late), [&](const Seen& one) {
    return one.outcome->capped >= (endless ? not_rarely : mostly);
  });
  if (late.empty()) return;
  if (endless) return find_endless(request, piece, late, found);
  std::vector<std::string> names;
  std::vector<domain::PersonId> people;
  for (const Seen& one : late) {
    names.push_back(one.person->name);
    people.push_back(one.person->person);
  }
  const bool nobody = std::ranges::all_of(seen, [](const Seen& s) { return s.outcome->capped > 0.9; });
  if (nobody) {
    add(found, FindingKind::NobodyFinishes, FindingSeverity::Problem,
        fmt::format("Nobody finishes {} within the cap.", name_of(request, piece)))
        .people = people;
    return;
  }
  const double share = static_cast<double>(names.size()) / static_cast<double>(seen.size());
  add(found, FindingKind::OverCap, share > a_third ? FindingSeverity::Problem : FindingSeverity::Warning,
      fmt::format("The cap of {} stops {} more often than not.", name_of(request, piece), some_names(names)))
      .people = people;
}

bool counts_rounds(const Script& script) {
  return script.step_rounds == 0 &&
         std::ranges::any_of(script.ops, [](const Op& op) { return op.kind == OpKind::RoundDone; });
}

void find_no_round(const FindingRequest& request, std::size_t piece, std::vector<Finding>& found) {
  std::vector<std::string> names;
  std::vector<domain::PersonId> people;
  for (const Seen& one : outcomes_of(request.rehearsal, piece)) {
    if (!counts_rounds(request.plan.pieces[piece].scripts[one.index])) continue;
    if (one.outcome->rounds && one.outcome->rounds->p50 >= 1) continue;
    names.push_back(one.person->name);
    people.push_back(one.person->person);
  }
  if (names.empty()) return;
  add(found, FindingKind::NoFullRound, FindingSeverity::Problem,
      fmt::format("{} {} not get through one full round of {}.", some_names(names),
                  names.size() == 1 ? "does" : "do", name_of(request, piece)))
      .people = people;
}

void find_uneven_heats(const FindingRequest& request, std::size_t piece, std::vector<Finding>& found) {
  std::map<int, std::vector<double>> ends;
  for (const Seen& one : outcomes_of(request.rehearsal, piece))
    if (one.outcome->measure == domain::Measure::Seconds)
      ends[request.plan.pieces[piece].scripts[one.index].heat].push_back(one.outcome->score.p50);
  if (ends.size() < 2) return;
  std::vector<std::pair<double, int>> lasts;
  lasts.reserve(ends.size());
  for (const auto& [heat, times] : ends) lasts.emplace_back(std::ranges::max(times), heat);
  const auto [least, most] = std::ranges::minmax_element(lasts);
  if (most->first - least->first < uneven_s) return;
  add(found, FindingKind::UnevenHeats, FindingSeverity::Note,
      fmt::format("Heat {} lasts {} and heat {} only {}: mix them, or start the long one first.",
                  most->second + 1, clock_words(most->first), least->second + 1, clock_words(least->first)));
}

double length_of(const domain::BoxOutcome& box) {
  return box.end_p50_s - box.start_p50_s;
}

/// Where the time goes: to the box that outgrows its plan most, or to what is written.
std::string too_long_by(const domain::ClassOutcome& when) {
  constexpr double outgrown_s = 60;
  const auto longer = [](const domain::BoxOutcome& box) {
    return length_of(box) - box.planned_s.value_or(length_of(box));
  };
  std::vector<domain::BoxOutcome> named;
  std::ranges::copy_if(when.boxes, std::back_inserter(named),
                       [](const domain::BoxOutcome& box) { return !box.name.empty(); });
  if (named.empty()) return {};
  const auto slowest = std::ranges::max_element(named, {}, longer);
  if (const auto planned = slowest->planned_s; planned && longer(*slowest) >= outgrown_s)
    return fmt::format("; {} takes {} longer than its {}", slowest->name, clock_words(longer(*slowest)),
                       clock_words(*planned));
  const auto longest = std::ranges::max_element(named, {}, length_of);
  return fmt::format("; its parts as written take {}, the longest is {} ({})", clock_words(when.p50_s),
                     longest->name, clock_words(length_of(*longest)));
}

}  // namespace

void find_unfinished(const FindingRequest& request, std::vector<Finding>& found) {
  for (std::size_t piece = 0; piece < request.plan.pieces.size(); ++piece) {
    find_caps(request, piece, found);
    find_no_round(request, piece, found);
    find_uneven_heats(request, piece, found);
  }
}

void find_overruns(const FindingRequest& request, std::vector<Finding>& found) {
  const domain::ClassOutcome& when = request.rehearsal.timetable;
  if (!when.planned_s || when.over_share < not_rarely) return;
  std::string text =
      fmt::format("The class of {} runs over in {:.0f} of 100 rehearsals, till {} one time in ten",
                  clock_words(*when.planned_s), 100 * when.over_share, clock_words(when.p90_s));
  text += too_long_by(when);
  add(found, FindingKind::OverClass,
      when.over_share >= mostly ? FindingSeverity::Problem : FindingSeverity::Warning, text + ".");
}

}  // namespace repwright::rehearsal
