#pragma once

#include "domain/board.hpp"

namespace repwright::board {

/// What a piece scores when no word says otherwise: docs/guide/reading.md, sections 2 and 8.
domain::Score usual_score(const domain::Block& block);

}  // namespace repwright::board
