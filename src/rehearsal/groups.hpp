#pragma once

#include <vector>

#include "domain/board.hpp"
#include "rehearsal/script.hpp"

/// Who works with whom, and when.
namespace repwright::rehearsal {

/// People in teams of the asked sizes, neighbours in the order of arrival together; who is left over joins
/// the last teams, one each.
std::vector<Team> make_teams(int people, const std::vector<int>& sizes);

/// People in the order of arrival: by how late each is, s, then as they are listed.
std::vector<int> arrival_order(const std::vector<double>& late);

/// Heats of a piece: those of the board, or more where so many teams do not fit on its lanes at once.
int heats_of(const domain::Block& block, int planned, int teams);

/// Where somebody stands: in which heat, and as which one of it, both from 0.
struct Standing {
  int heat = 0;
  int place = 0;
  bool operator==(const Standing&) const = default;
};
/// Of who starts as number `rank` (a person, or a team) where there are so many heats.
Standing standing_of(int rank, int heats);

/// The heats of a piece and where everybody stands, by how late each is, s; people of a team stand together.
struct Standings {
  int heats = 1;
  std::vector<Standing> people;
};
Standings standings(const domain::Block& block, int planned_heats, const std::vector<double>& late);

/// What the shared counts of a team of `size` are multiplied by.
double team_factor(const domain::Block& block, int size);

}  // namespace repwright::rehearsal
