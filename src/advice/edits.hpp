#pragma once

#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/hall.hpp"
#include "domain/house.hpp"
#include "domain/rehearsal.hpp"
#include "domain/repair.hpp"
#include "timetable/timetable.hpp"

namespace repwright::advice {

/// What edits are looked for in; `before` is a rehearsal of the board as it stands.
struct EditRequest {
  const domain::Board& board;
  const timetable::Timetable& timetable;
  const domain::Catalogue& catalogue;
  const domain::Rehearsal& before;
  const domain::Hall& hall;
  const domain::House& house;
};

/// Every single small change that could shorten waiting or help the class to end in time: another start for
/// every second person, two neighbouring movements swapped, a start in turns, heats, a second station, fewer
/// reps of what people queue for, shorter runs, fewer rounds. Those that only help against queues are left
/// out where nobody queues, those that only save time where there is time. Each leaves everything else as it
/// was.
std::vector<domain::Edit> edits_of(const EditRequest& request);

}  // namespace repwright::advice
