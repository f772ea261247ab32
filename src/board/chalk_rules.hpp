#pragma once

#include <string>
#include <vector>

#include "board/chalk_item.hpp"

namespace repwright::board {

/// What stands behind the clock on its line: `, cap 18 min, heats 2, keep the bar`.
std::string conditions(const domain::Block& block, const Chalk& chalk);

/// The lines below the work: duties, prices, ends by level, intent, score, the coach's words.
std::vector<std::string> chalk_rules(const domain::Block& block, const Chalk& chalk, const ItemPlace& place);

}  // namespace repwright::board
