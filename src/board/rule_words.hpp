#pragma once

#include <string>

#include "board/item_words.hpp"

namespace repwright::board {

/// What stands behind the clock of a piece: `, cap 18 minutes, in two heats`.
std::string condition_words(const domain::Block& block);

/// What stands behind the work: `; each break costs 5 burpees; the total kilocalories count`.
std::string rule_words(const domain::Block& block, const Telling& telling);

/// `2 minutes of rest`, `rest as long as the work`; empty if the block says nothing of rest.
std::string rest_words(const domain::Block& block);

}  // namespace repwright::board
