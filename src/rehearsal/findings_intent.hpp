#pragma once

#include <vector>

#include "domain/board.hpp"
#include "domain/rehearsal.hpp"
#include "timetable/timetable.hpp"

namespace repwright::rehearsal {

/// What missed intents are looked for in; all of it must outlive the call.
struct IntentRequest {
  const domain::Rehearsal& rehearsal;
  const timetable::Timetable& timetable;
  const domain::Board& board;
};

/// Who does not get what the coach means the piece to be: misses-intent, one finding for each piece.
void find_missed_intents(const IntentRequest& request, std::vector<domain::Finding>& found);

}  // namespace repwright::rehearsal
