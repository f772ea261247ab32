#pragma once

#include <vector>

#include "domain/rehearsal.hpp"
#include "rehearsal/routes.hpp"
#include "rehearsal/write_script.hpp"

/// What can be said before anybody moves.
namespace repwright::rehearsal {

/// Versions, counts and loads that differ from the board, one finding per line: `limit-swapped`.
std::vector<domain::Finding> swap_findings(const WriteRequest& request);
/// Lines that the catalogue does not know: `free-text`.
std::vector<domain::Finding> free_text_findings(const WriteRequest& request);
/// Loose kit that does not reach, and places of which none is left: `kit-short`.
std::vector<domain::Finding> kit_findings(const WriteRequest& request,
                                          const std::vector<domain::EquipmentId>& missing_places);
/// Fewer people than one team of a piece has: `too-few-for-a-team`.
std::vector<domain::Finding> team_findings(const WriteRequest& request);
/// Distances whose usual route is shut: `route-closed`. `routes` by step.
std::vector<domain::Finding> route_findings(const WriteRequest& request,
                                            const std::vector<RouteChoice>& routes);

}  // namespace repwright::rehearsal
