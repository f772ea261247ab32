#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/board.hpp"
#include "domain/rehearsal.hpp"
#include "domain/target.hpp"
#include "timetable/timetable.hpp"

namespace repwright::advice {

/// Enough are home for a cap once so many are: the lower end of what coaches ask, 85 to 90 % (common
/// practice, no source).
inline constexpr double enough_home = 0.85;

/// The board with no cap on its pieces but those whose window of the hour ends them.
domain::Board without_caps(const domain::Board& board, const timetable::Timetable& timetable);

/// What targets are looked for in. `uncapped` is a rehearsal of `without_caps` with its draws kept; `levels`
/// has for each person the place of theirs among a piece's levels, if it has some.
struct TargetRequest {
  const domain::Board& board;  // as it stands
  const timetable::Timetable& timetable;
  const domain::Rehearsal& uncapped;
  const std::vector<std::optional<int>>& levels;
};

/// A cap of the board by which no more than so many are home stays.
inline constexpr double nearly_all_home = 0.92;

/// Of every piece that is scored in time, counts or distance, but for sets on private clocks and work that is
/// the same in every interval: the first whole minute by which `enough_home` of people and runs are home,
/// where a piece ends with its people, and what each level makes of it; without levels on the board the
/// quickest, middle and last third of the class. Fewer than three people are one level. Who is never home is
/// beyond every cap and in no range.
std::vector<domain::PieceTarget> targets_of(const TargetRequest& request);

}  // namespace repwright::advice
