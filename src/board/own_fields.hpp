#pragma once

#include "domain/board.hpp"

namespace repwright::board {

/// Takes from a block what its kind does not have (docs/guide/reading.md, section 2: lanes of a lift, laps of
/// a note). Returns whether there was anything.
bool drop_foreign_fields(domain::Block& block);

}  // namespace repwright::board
