#pragma once

#include <functional>
#include <vector>

namespace repwright::advice {

/// The partner of each of an even number of people so that everybody has one and the sum of `cost(i, j)`, to
/// a thousandth, is least. Costs are 0 or more and at most a million.
std::vector<int> match_in_pairs(int people, const std::function<double(int, int)>& cost);

}  // namespace repwright::advice
