#pragma once

#include <vector>

#include "domain/board.hpp"
#include "domain/rehearsal.hpp"
#include "domain/repair.hpp"
#include "timetable/timetable.hpp"

namespace repwright::advice {

/// The blocks of the pieces, in their order; the board must outlive the answer.
std::vector<const domain::Block*> piece_blocks(const domain::Board& board,
                                               const timetable::Timetable& timetable);

/// The few figures of a rehearsal by which repairs are compared. `pieces` are the blocks of its pieces;
/// without them nothing is known to be intended.
domain::Consequences consequences_of(const domain::Rehearsal& rehearsal,
                                     const std::vector<const domain::Block*>& pieces = {});

/// What counts as much as one minute of standing about, each a judgement of ours (docs/decisions/repairs.md).
inline constexpr double minutes_of_unfinished = 3;  // one person stopped by the cap
inline constexpr double minutes_of_lost_work = 10;  // all of the work dropped

/// How heavily a version of the board weighs on the class, in minutes per person: waiting, people stopped by
/// the cap, people off the intent, a class that runs over, and work lost against `asked_work_s`.
/// docs/decisions/repairs.md says what counts how much.
double burden(const domain::Consequences& consequences, double asked_work_s);

}  // namespace repwright::advice
