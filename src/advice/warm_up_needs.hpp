#pragma once

#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/ids.hpp"
#include "domain/warm_up_plan.hpp"

namespace repwright::advice {

/// The lines of the board that a warm-up prepares: all but those of its warm-up and cool-down, and of what is
/// optional. In the order of the board, which must outlive the answer.
std::vector<const domain::Item*> lines_to_prepare(const domain::Board& board);

/// Joints at the end of their range, patterns and primary muscles of these lines, each once with its largest
/// weight, the weightiest first. Lines whose movement the catalogue does not know ask for nothing.
std::vector<domain::WarmUpNeed> warm_up_needs(const std::vector<const domain::Item*>& lines,
                                              const domain::Catalogue& catalogue);

}  // namespace repwright::advice
