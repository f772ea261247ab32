#pragma once

#include <vector>

#include "domain/board.hpp"
#include "rehearsal/script.hpp"

/// Who works with whom, and when.
namespace repwright::rehearsal {

/// People in teams of the asked sizes, neighbours in the order of arrival together; who is left over joins
/// the last teams, one each.
std::vector<Team> make_teams(int people, const std::vector<int>& sizes);

/// What the shared counts of a team of `size` are multiplied by.
double team_factor(const domain::Block& block, int size);

}  // namespace repwright::rehearsal
