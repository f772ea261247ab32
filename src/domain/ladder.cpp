#include "domain/ladder.hpp"

#include <algorithm>
#include <vector>

namespace repwright::domain {

int steps_down(const Catalogue& catalogue, const MovementId& from, const MovementId& to) {
  std::vector<MovementId> seen{from};
  std::size_t begin = 0;
  for (int steps = 1; begin < seen.size(); ++steps) {
    const std::size_t end = seen.size();
    for (; begin < end; ++begin) {
      const Movement* movement = catalogue.find(seen[begin]);
      if (movement == nullptr) continue;
      for (const MovementId& easier : movement->easier) {
        if (easier == to) return steps;
        if (std::ranges::find(seen, easier) == seen.end()) seen.push_back(easier);
      }
    }
  }
  return 0;
}

}  // namespace repwright::domain
