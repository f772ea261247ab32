#pragma once

#include "board/session.hpp"

/// `AMRAP 6 / rest 2 / AMRAP 6` over one list of work.
namespace repwright::board {

/// How many clocks without work of their own stand right above the piece being read, rests between them.
int clocks_waiting(const Chapter& chapter);

/// Gives such clocks the work below the last of them: to each the lines of its number (`1:`, `2:`), or to
/// each all of it, which is remarked.
void share_work_of_clocks(Session& session, std::vector<Draft>& drafts);

}  // namespace repwright::board
