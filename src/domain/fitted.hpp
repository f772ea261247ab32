#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "domain/board.hpp"
#include "domain/ids.hpp"

namespace repwright::domain {

/// One line of the board as one person does it: version, amount and load are decided, levels and tiers
/// resolved. `amount` is a number, AtLeast, PerSet, Climb, Max or Range (sets), in `unit`. Nothing to do (a
/// rest instead) is an amount of 0.
struct FittedItem {
  StepId step;
  MovementId movement;  // empty: free text, done at prior cost
  Amount amount = 0.0;
  Unit unit = Unit::Reps;
  std::optional<base::Mass> load;     // per implement
  std::vector<base::Mass> set_loads;  // per implement and set, where the sets differ
  bool felt_load = false;             // to begin with; the body of the day decides
  int implements = 1;
  bool each_side = false;
  std::optional<base::Length> height;  // of the box
  double score_factor = 1;             // so many of this version count one: 3 singles
  MovementId gate;                     // what this person holds while the others work; empty: rests
  MovementId second_station;           // empty: none, or not for this person
  std::string swapped_for;  // the person's action text or the reason in plain words; empty: as written
  EquipmentId lacking;      // the kind of place whose want is that reason; empty: another one
  bool operator==(const FittedItem&) const = default;
};

/// `items[step.index]` is that line of the board.
struct FittedPerson {
  PersonId person;
  std::optional<int> level;  // index into the block's levels
  std::vector<FittedItem> items;
  std::map<BlockId, int> rounds;  // of pieces that this person does more or less often than written
  bool operator==(const FittedPerson&) const = default;
};

/// The board with one step list per person, in the order of the people.
struct FittedBoard {
  Board board;
  std::vector<FittedPerson> people;
  bool operator==(const FittedBoard&) const = default;
};

}  // namespace repwright::domain
