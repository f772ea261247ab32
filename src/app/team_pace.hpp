#pragma once

#include <vector>

#include "app/rehearse_class.hpp"
#include "domain/board.hpp"

namespace repwright::app {

/// How long everybody is at a piece for teams alone, on a floor where nobody waits: seconds of their share of
/// what the team shares, and of what each does for themselves. A piece that is counted is taken to last its
/// length for whoever does the mean count, and longer for whoever does less.
struct TeamPace {
  std::vector<double> shared, own;
};
base::Result<TeamPace> team_pace(const ClassRequest& request, const Gathered& gathered,
                                 const domain::Block& piece);

/// When everybody is through with a piece by its middle score: seconds, or for counts as in `TeamPace`.
std::vector<double> middle_ends(const domain::Rehearsal& rehearsal, std::size_t piece,
                                const domain::Block& block);

}  // namespace repwright::app
