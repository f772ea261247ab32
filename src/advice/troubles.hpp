#pragma once

#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/ids.hpp"
#include "domain/rehearsal.hpp"
#include "timetable/timetable.hpp"

namespace repwright::advice {

/// What is wrong with one piece, each true when it holds for more than a tenth of the people (a judgement of
/// ours).
struct PieceTrouble {
  bool capped = false;    // stopped by the cap
  bool too_much = false;  // their middle run is more than the piece intends
  bool too_little = false;
};

/// What a rehearsal says is wrong with a class, as far as a change of the board could mend it.
struct Troubles {
  std::vector<domain::EquipmentId> crowded;  // places and routes where people wait five seconds and more
  bool crowded_course = false;               // one of them is a route of the hall
  bool class_over = false;                   // in more than a tenth of the runs
  std::vector<PieceTrouble> pieces;          // by the timetable's pieces

  /// Whether the movement needs a place of which too few are there.
  bool needs_crowded_place(const domain::Movement& movement) const;
};

Troubles troubles_of(const domain::Rehearsal& rehearsal, const domain::Board& board,
                     const timetable::Timetable& timetable, const domain::Catalogue& catalogue);

}  // namespace repwright::advice
