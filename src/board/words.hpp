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

/// How a piece goes, without its work: `Every 3 minutes, seven times`, `Four sets, 1 minute of rest`.
std::string scheme_in_words(const domain::Block& block, const domain::Catalogue& catalogue,
                            const domain::House& house);

}  // namespace repwright::board
