#pragma once

#include <optional>
#include <vector>

#include "base/quantity.hpp"
#include "domain/board.hpp"
#include "timetable/timetable.hpp"

/// From one block to its clock.
namespace repwright::timetable {

/// Whether people work against a clock in it; the rest of a board is boxes only.
bool has_clock(const domain::Block& block);

/// The work and rest stretches of one heat, whole milliseconds from the start signal, touching; empty unless
/// the block's clock has edges.
std::vector<Phase> phases_of(const domain::Block& block, const LayoutRules& rules);

/// The block as a piece; its name is the title, or empty.
Piece piece_of(const domain::Block& block, const LayoutRules& rules);

/// How long all heats of the block take with the changes between them, if the board decides it: its minutes,
/// else its edges.
std::optional<base::Duration> planned_length(const domain::Block& block, const LayoutRules& rules);

}  // namespace repwright::timetable
