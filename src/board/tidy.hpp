#pragma once

#include <string>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/house.hpp"

namespace repwright::board {

/// The board as canonical chalk: one line of work a line, full names, units written. For every board that
/// `read` gives in this house, `read(tidy(board))` gives the same board.
std::string tidy(const domain::Board& board, const domain::Catalogue& catalogue, const domain::House& house);

}  // namespace repwright::board
