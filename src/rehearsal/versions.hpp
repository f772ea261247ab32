#pragma once

#include <string>
#include <vector>

#include "domain/board.hpp"
#include "rehearsal/ability.hpp"

/// Which version of a movement a person does.
namespace repwright::rehearsal {

struct Version {
  const domain::Movement* movement = nullptr;
  double factor = 1;      // so many of it stand for one written
  bool standing = false;  // the person's own choice: one rep of it is enough
  bool alike = false;     // only shares a pattern with what is written
};

/// The person's standing version where the board writes that movement, said by its id, by a class word that
/// can mean it ("pull"), or by its first pattern; null if none is kept.
const domain::Movement* standing_version(const Ability& ability, const domain::Movement& written);

/// All that may stand in for the written movement, the likeliest first: the standing version, the board's
/// options and second station, swaps for the person's limits, easier versions nearest first, then what shares
/// a pattern.
std::vector<Version> stand_ins(const Ability& ability, const domain::Movement& written,
                               const domain::Item* item);

/// The first stand-in that no limit forbids, that has its places, and of which the person has at least one.
/// `set` is how many are asked for in one go; where `for_lack_of_reps`, the standing version and those with
/// five and twice the set, then five, go first; those that only share a pattern go last.
struct StandInRule {
  double set = 0;
  bool for_lack_of_reps = false;
};
Version first_passing(const Ability& ability, const std::vector<Version>& versions, StandInRule rule);

/// Whether no limit forbids it, its places are there, and the best set, with the lightest usual load, is at
/// least so many.
bool passes(const Ability& ability, const domain::Movement& movement, double at_least);

/// The movement itself if it passes, else the first stand-in that does; null if none.
const domain::Movement* allowed_version(const Ability& ability, const domain::MovementId& written);

}  // namespace repwright::rehearsal
