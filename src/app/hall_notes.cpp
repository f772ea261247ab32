#include "app/hall_notes.hpp"

namespace repwright::app {

std::vector<std::string> hall_notes(const domain::Hall& hall) {
  if (!hall.unlimited) return {};
  return {"the hall lists no places and no kit: of both there is taken to be enough for everybody"};
}

std::vector<std::string> hall_notes(const domain::Hall& hall, const domain::Rehearsal& rehearsal) {
  std::vector<std::string> notes = hall_notes(hall);
  for (const domain::Finding& finding : rehearsal.findings)
    if (finding.kind == domain::FindingKind::HallTooFull &&
        finding.severity == domain::FindingSeverity::Problem)
      notes.push_back(finding.text);
  return notes;
}

}  // namespace repwright::app
