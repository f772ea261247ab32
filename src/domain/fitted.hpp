#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "domain/board.hpp"
#include "domain/ids.hpp"

namespace repwright::domain {

/// One line of the board as one person does it: version, amount and load are decided, levels and tiers
/// resolved. `amount` is a number, PerSet, Climb, Max or Range (sets), in `unit`.
struct FittedItem {
  StepId step;
  MovementId movement;  // empty: free text, done at prior cost
  Amount amount = 0.0;
  Unit unit = Unit::Reps;
  std::optional<base::Mass> load;  // per implement
  int implements = 1;
  bool each_side = false;
  std::string swapped_for;  // the person's action text or the reason in plain words; empty: as written
  bool operator==(const FittedItem&) const = default;
};

/// `items[step.index]` is that line of the board.
struct FittedPerson {
  PersonId person;
  std::optional<int> level;  // index into the block's levels
  std::vector<FittedItem> items;
  bool operator==(const FittedPerson&) const = default;
};

/// The board with one step list per person, in the order of the people.
struct FittedBoard {
  Board board;
  std::vector<FittedPerson> people;
  bool operator==(const FittedBoard&) const = default;
};

}  // namespace repwright::domain
