#pragma once

#include <optional>
#include <vector>

#include "domain/board.hpp"
#include "domain/fitted.hpp"
#include "timetable/timetable.hpp"

namespace repwright::app {

/// How many reps one person can score in a piece whose every interval asks for a number of them; empty where
/// the board sets no such number. `lines`: the piece's lines as the person does them.
std::optional<double> most_reps(const domain::Block& block, const timetable::Piece& piece,
                                const std::vector<domain::FittedItem>& lines);

}  // namespace repwright::app
