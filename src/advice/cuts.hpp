#pragma once

#include <string>
#include <vector>

#include "advice/repairs.hpp"
#include "base/result.hpp"
#include "domain/board.hpp"
#include "domain/hour_plan.hpp"
#include "rehearsal/rehearse.hpp"

namespace repwright::advice {

/// One thing less on the board, in the coach's words. `loss` is what it costs beside work, in minutes of
/// preparing or recovering.
struct Cut {
  std::string words;
  domain::Board board;
  double loss = 0;
};

/// All single cuts of a board: a piece before the last one left out, a set or a round less, a clocked piece,
/// a long warm-up, rest or cool-down two minutes or one shorter. Never the briefing, never the last piece.
std::vector<Cut> cuts_of(const domain::Board& board);

/// What to cut first: at most `most` cuts, each the one that loses least for every minute it gives, tried
/// with so many runs on top of those before it. Cuts that give nothing are left out. Fails as `trial` does.
struct CutSearch {
  int most = 4;
  int runs = 32;
};
base::Result<std::vector<domain::HourCut>> cuts_in_order(const domain::Board& board, const Trial& trial,
                                                         const CutSearch& search,
                                                         const rehearsal::ForEach& for_each);

}  // namespace repwright::advice
