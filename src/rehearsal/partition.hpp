#pragma once

#include <vector>

namespace repwright::rehearsal {

/// What one line of a free partition asks for, and the person's best set of it (infinite for machines).
struct Portion {
  double amount = 0;
  double best = 0;
};

/// How many even parts a person divides a free piece into: the fewest that divide all counts without rest and
/// leave each set at about a third of the best set or less; if none does, the fewest that do so with counts
/// that differ by one from part to part; at most 40.
int even_parts(const std::vector<Portion>& portions);

/// The count of part `part` (from 0) of `parts`: whole numbers that add up to a whole `amount`.
double part_of(double amount, int part, int parts);

}  // namespace repwright::rehearsal
