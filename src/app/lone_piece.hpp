#pragma once

#include "domain/board.hpp"

namespace repwright::app {

/// A piece for teams as one person does their share of it alone, without its cap, lanes, heats and starts in
/// turn: shared counts divided by the size of a team, own turns of a relay, every line where teams take turns
/// by round. Another piece only loses what belongs to a crowd.
domain::Block lone_piece(const domain::Block& piece);

}  // namespace repwright::app
