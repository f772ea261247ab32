#pragma once

#include <vector>

#include "domain/catalogue.hpp"
#include "domain/fitted.hpp"
#include "domain/people.hpp"
#include "sheets/swaps_text.hpp"

namespace repwright::app {

/// Every line of the board that a person does otherwise than written, by line, then in the order of `people`,
/// who are those of the fitted board.
std::vector<sheets::Swap> swaps_of(const domain::FittedBoard& fitted, const domain::Catalogue& catalogue,
                                   const std::vector<domain::Person>& people);

}  // namespace repwright::app
