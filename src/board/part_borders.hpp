#pragma once

#include "board/session.hpp"

/// Where a part of the class ends without a heading that says so.
namespace repwright::board {

/// Opens a part without a heading if the line cannot belong to the part above.
void leave_part(Session& session, const Cursor& line);

}  // namespace repwright::board
