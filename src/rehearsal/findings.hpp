#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "body/body.hpp"
#include "domain/catalogue.hpp"
#include "domain/hall.hpp"
#include "domain/rehearsal.hpp"
#include "rehearsal/script.hpp"
#include "timetable/timetable.hpp"

namespace repwright::rehearsal {

using GroupReps = std::array<double, body::group_count>;

/// `reps_by_group` of what a person has done in one week, the latest week last; empty: nothing known.
struct History {
  std::vector<GroupReps> weeks;
};

/// What findings are looked for in; what it points to must outlive the call.
struct FindingRequest {
  const domain::Rehearsal& rehearsal;
  const FloorPlan& plan;
  const timetable::Timetable& timetable;
  const domain::Catalogue& catalogue;
  const domain::Hall& hall;
  std::vector<History> history;  // per person, or empty
};

/// What the coach should know, the gravest first, as sentences. Those that are seen while the scripts are
/// written (limit-swapped, kit-short, route-closed, free-text) come from `write_scripts`; misses-intent needs
/// advice.
std::vector<domain::Finding> find(const FindingRequest& request);

/// The single searches, in their own files.
void find_queues(const FindingRequest& request, std::vector<domain::Finding>& found);
void find_unfinished(const FindingRequest& request, std::vector<domain::Finding>& found);
void find_overruns(const FindingRequest& request, std::vector<domain::Finding>& found);
void find_late_runners(const FindingRequest& request, std::vector<domain::Finding>& found);
void find_crowding(const FindingRequest& request, std::vector<domain::Finding>& found);
void find_too_few_places(const FindingRequest& request, std::vector<domain::Finding>& found);
void find_jumps_in_load(const FindingRequest& request, std::vector<domain::Finding>& found);

/// Reps that the person did in the class, mean over the runs; those of movements that are easy on the muscle
/// (a low stress of lowering in the catalogue) count a third.
GroupReps reps_by_group(const FindingRequest& request, std::size_t person);

/// '3:05', '1:02:10'.
std::string clock_words(double seconds);
/// 'Ana', 'Ana and Bo', 'Ana, Bo and 5 more'.
std::string some_names(const std::vector<std::string>& names);

/// As people call the place.
std::string place_name(const domain::PlaceUse& use, const domain::Catalogue& catalogue);
/// Whether the line is worked at that kind of place.
bool needs_place(const FloorPlan& plan, const Script& script, domain::StepId step,
                 const domain::EquipmentId& place);

/// One person's outcome of one piece of the plan, with who it is.
struct Seen {
  const domain::PersonOutcome* person = nullptr;
  const domain::PieceOutcome* outcome = nullptr;
  std::size_t index = 0;  // of the person
};
std::vector<Seen> outcomes_of(const domain::Rehearsal& rehearsal, std::size_t piece);

}  // namespace repwright::rehearsal
