#pragma once

#include <optional>

#include "base/quantity.hpp"
#include "domain/board.hpp"

namespace repwright::timetable {

/// How long the board takes when every part of it has a length of its own: headings' minutes count, every
/// work and rest of intervals and circuits counts as written, a time cap is no length. Nothing if a part is
/// open or the sum is zero. The rule: docs/guide/reading.md, "fixed_seconds".
std::optional<base::Duration> fixed_length(const domain::Board& board);

/// The same of one block, its heats included; zero for what takes no time of the class.
std::optional<base::Duration> fixed_length(const domain::Block& block);

}  // namespace repwright::timetable
