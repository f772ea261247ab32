#include "rehearsal/findings.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "base/clock_text.hpp"

namespace repwright::rehearsal {

std::string clock_words(double seconds) {
  return base::format_clock(base::Duration::from_si(std::round(seconds)));
}

std::string some_names(const std::vector<std::string>& names) {
  constexpr std::size_t shown = 3;
  std::string words;
  const std::size_t named = names.size() <= shown + 1 ? names.size() : shown;
  for (std::size_t i = 0; i < named; ++i) {
    if (i > 0) words += i + 1 == names.size() ? " and " : ", ";
    words += names[i];
  }
  if (named < names.size()) words += " and " + std::to_string(names.size() - named) + " more";
  return words;
}

std::string place_name(const domain::PlaceUse& use, const domain::Catalogue& catalogue) {
  if (!use.name.empty()) return use.name;
  const domain::Equipment* equipment = catalogue.find(use.place);
  return equipment ? equipment->name : use.place.text;
}

bool needs_place(const FloorPlan& plan, const Script& script, domain::StepId step,
                 const domain::EquipmentId& place) {
  return std::ranges::any_of(script.tasks, [&](const Task& task) {
    return task.place >= 0 && task.step == step &&
           plan.places[static_cast<std::size_t>(task.place)].equipment == place;
  });
}

std::vector<Seen> outcomes_of(const domain::Rehearsal& rehearsal, std::size_t piece) {
  std::vector<Seen> seen;
  for (std::size_t p = 0; p < rehearsal.people.size(); ++p) {
    const domain::PersonOutcome& person = rehearsal.people[p];
    seen.push_back({.person = &person, .outcome = &person.pieces[piece], .index = p});
  }
  return seen;
}

std::vector<domain::Finding> find(const FindingRequest& request) {
  std::vector<domain::Finding> found;
  find_overruns(request, found);
  find_unfinished(request, found);
  find_queues(request, found);
  find_late_runners(request, found);
  find_crowding(request, found);
  find_too_few_places(request, found);
  find_jumps_in_load(request, found);
  std::vector<domain::Finding> gravest_first;
  gravest_first.reserve(found.size());
  using domain::FindingSeverity;
  for (const auto severity : {FindingSeverity::Problem, FindingSeverity::Warning, FindingSeverity::Note})
    std::ranges::copy_if(found, std::back_inserter(gravest_first),
                         [&](const domain::Finding& finding) { return finding.severity == severity; });
  return gravest_first;
}

}  // namespace repwright::rehearsal
