#pragma once

#include <string>
#include <vector>

#include "board/chalk_item.hpp"

namespace repwright::board {

/// Chalk lines of one piece: the clock first, then the work, then its rules. `letter`: of a superset.
/// `headed`: a heading above gives the minutes that are not part of the clock.
struct PiecePlace {
  char letter = 'A';
  bool headed = false;
  std::size_t levels = 0;  // of the piece around
};
std::vector<std::string> chalk_piece(const domain::Block& block, const Chalk& chalk, const PiecePlace& place);

/// Whether the block's minutes stand in its heading and not in its clock.
bool minutes_in_heading(const domain::Block& block);

}  // namespace repwright::board
