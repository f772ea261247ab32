#include "rehearsal/partition.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace repwright::rehearsal {

namespace {

constexpr int most_parts = 40;
constexpr double share_of_best = 1.0 / 3;

bool small_enough(const std::vector<Portion>& portions, int parts) {
  return std::ranges::all_of(portions, [&](const Portion& portion) {
    return portion.amount / parts <= std::max(1.0, std::round(portion.best * share_of_best));
  });
}

long common_divisor(const std::vector<Portion>& portions) {
  long divisor = 0;
  for (const Portion& portion : portions) divisor = std::gcd(divisor, std::lround(portion.amount));
  return divisor;
}

}  // namespace

int even_parts(const std::vector<Portion>& portions) {
  const long divisor = common_divisor(portions);
  int fewest = 1;
  while (fewest < most_parts && !small_enough(portions, fewest)) ++fewest;
  for (int parts = fewest; parts <= most_parts; ++parts)
    if (divisor % parts == 0 && small_enough(portions, parts)) return parts;
  return fewest;
}

double part_of(double amount, int part, int parts) {
  const auto up_to = [&](int count) { return std::floor(amount * count / parts + 1e-9); };
  return part + 1 == parts ? amount - up_to(part) : up_to(part + 1) - up_to(part);
}

}  // namespace repwright::rehearsal
