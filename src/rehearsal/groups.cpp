#include "rehearsal/groups.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>

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

std::vector<int> arrival_order(const std::vector<double>& late) {
  std::vector<int> order(late.size());
  std::iota(order.begin(), order.end(), 0);
  std::ranges::sort(order, {},
                    [&](int person) { return std::pair(late[static_cast<std::size_t>(person)], person); });
  return order;
}

int heats_of(const domain::Block& block, int planned, int teams) {
  const int lanes = std::max(1, block.lanes.value_or(teams));
  return std::max(planned, (teams + lanes - 1) / lanes);
}

Standing standing_of(int rank, int heats) {
  return {rank % heats, rank / heats};
}

Standings standings(const domain::Block& block, int planned_heats, const std::vector<double>& late) {
  const std::vector<int> order = arrival_order(late);
  Standings out{planned_heats, std::vector<Standing>(late.size())};
  if (block.kind != domain::BlockKind::Partner && block.kind != domain::BlockKind::Relay) {
    for (std::size_t rank = 0; rank < order.size(); ++rank)
      out.people[static_cast<std::size_t>(order[rank])] = standing_of(static_cast<int>(rank), out.heats);
    return out;
  }
  const std::vector<Team> teams = make_teams(static_cast<int>(order.size()), block.team_sizes);
  out.heats = heats_of(block, planned_heats, static_cast<int>(teams.size()));
  for (std::size_t index = 0; index < teams.size(); ++index)
    for (const int member : teams[index].people)
      out.people[static_cast<std::size_t>(order[static_cast<std::size_t>(member)])] =
          standing_of(static_cast<int>(index), out.heats);
  return out;
}

}  // namespace repwright::rehearsal
