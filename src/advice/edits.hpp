#pragma once

#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/hall.hpp"
#include "domain/house.hpp"
#include "domain/rehearsal.hpp"
#include "domain/repair.hpp"
#include "domain/target.hpp"
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
  const std::vector<domain::PieceTarget>& targets;  // of some pieces; a later cap is theirs
};

/// Every single small change that could shorten waiting, bring a piece to what it intends, or help the class
/// to end in time. Those that only help against queues are left out where nobody queues, those that change
/// how much is done where that is as intended. Each leaves everything else as it was; no two give the same
/// board.
std::vector<domain::Edit> edits_of(const EditRequest& request);

}  // namespace repwright::advice
