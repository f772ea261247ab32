#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advice/repairs.hpp"
#include "base/result.hpp"
#include "domain/board.hpp"
#include "domain/hour_plan.hpp"
#include "rehearsal/rehearse.hpp"

namespace repwright::advice {

/// What is cut, in the coach's words: how much of it there is then and now, or nothing of it any more.
struct CutWords {
  std::string name;
  std::string what;  // of it: `sets`, `length`; two cuts of the same go on from one another
  std::string then;  // empty: left out
  std::string now;

  std::string said() const;
};

/// One thing less on the board. `loss` is what it costs beside work, in minutes of preparing or recovering.
struct Cut {
  CutWords words;
  domain::Board board;
  double loss = 0;
};

/// All single cuts of a board: a piece before the last one left out, a set or a round less, a clocked piece,
/// a long warm-up, rest or cool-down two minutes or one shorter, a cap earlier.
/// Never the briefing, never the last piece.
std::vector<Cut> cuts_of(const domain::Board& board);

/// A cut of the order, and the board that it and all before it leave.
struct OrderedCut {
  CutWords words;
  domain::HourCut told;
  domain::Board board;
};

/// What to cut first: at most `most` cuts, each the one that loses least for every minute it gives, tried
/// with so many runs on top of those before it. Cuts that give nothing are left out. Fails as `trial` does.
struct CutSearch {
  int most = 4;
  int runs = 32;
  std::optional<double> until_s = {};  // no more once nine of ten such classes are over by then
};
base::Result<std::vector<OrderedCut>> cuts_in_order(const domain::Board& board, const Trial& trial,
                                                    const CutSearch& search,
                                                    const rehearsal::ForEach& for_each);

}  // namespace repwright::advice
