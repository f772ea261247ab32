#pragma once

#include "domain/board.hpp"

namespace repwright::rehearsal {

/// Whether what is done on that line adds to the score of the piece (or to the count at its cap): only what
/// the score measures, and of a piece with an open line only that line; metres never add to repetitions.
bool is_counted(const domain::Block& piece, const domain::Item& item, domain::Unit unit);

}  // namespace repwright::rehearsal
