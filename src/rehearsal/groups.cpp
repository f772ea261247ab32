#include "rehearsal/groups.hpp"

#include <algorithm>
#include <cstddef>

namespace repwright::rehearsal {

std::vector<Team> make_teams(int people, const std::vector<int>& sizes) {
  const int size = sizes.empty() ? 2 : std::max(1, std::ranges::min(sizes));
  const int count = std::max(1, people / size);
  std::vector<Team> teams(static_cast<std::size_t>(people > 0 ? count : 0));
  int next = 0;
  for (int team = 0; team < static_cast<int>(teams.size()); ++team) {
    const int left_over = people - count * size;
    const int extra = left_over > 0 ? left_over / count + (team >= count - left_over % count ? 1 : 0) : 0;
    for (int i = 0; i < size + extra && next < people; ++i)
      teams[static_cast<std::size_t>(team)].people.push_back(next++);
  }
  return teams;
}

double team_factor(const domain::Block& block, int size) {
  return block.odd_team && block.odd_team->size == size ? block.odd_team->factor : 1;
}

}  // namespace repwright::rehearsal
