#pragma once

#include <vector>

#include "advice/edits.hpp"
#include "advice/troubles.hpp"

namespace repwright::advice {

/// The edits of one piece against standing in a queue: another start for every second person, neighbours
/// swapped, starts in turn, heats, a second station, fewer reps or shorter runs of what people queue for.
std::vector<domain::Edit> queue_edits(const EditRequest& request, const Troubles& troubles,
                                      const timetable::Piece& piece, const domain::Block& block);

}  // namespace repwright::advice
