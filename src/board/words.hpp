#pragma once

#include <string>
#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/house.hpp"

namespace repwright::board {

/// The board read back: one plain English sentence for each top block, loads in the house's unit.
std::vector<std::string> in_words(const domain::Board& board, const domain::Catalogue& catalogue,
                                  const domain::House& house);

}  // namespace repwright::board
