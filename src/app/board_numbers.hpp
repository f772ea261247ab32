#pragma once

#include <optional>
#include <vector>

#include "app/renumber.hpp"
#include "domain/board.hpp"

namespace repwright::app {

/// A number of a board that is another in its changed copy: an amount of a line, or how often, how long or by
/// when of a block.
struct ChangedNumber {
  domain::BlockId block;
  std::optional<domain::StepId> step;  // where it is an amount
  NumberKind kind = NumberKind::Count;
  double from = 0;
  double to = 0;
};

/// All of them in the order of the board; none where parts were taken away or added.
std::vector<ChangedNumber> changed_numbers(const domain::Board& before, const domain::Board& after);

}  // namespace repwright::app
