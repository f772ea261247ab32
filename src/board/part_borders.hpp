#pragma once

#include "board/session.hpp"

/// Where a part of the class ends without a heading that says so.
namespace repwright::board {

/// Opens a part without a heading if the line cannot belong to the part above.
void leave_part(Session& session, const Cursor& line);

/// The lift whose sets begin here: `back squat 5x5`, `5x5 back squat`; nothing if none do.
std::optional<Named> sets_of_lift_at(const Session& session, Cursor cursor);

}  // namespace repwright::board
