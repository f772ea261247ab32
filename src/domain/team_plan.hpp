#pragma once

#include <string>
#include <vector>

#include "domain/ids.hpp"

/// Who works with whom.
namespace repwright::domain {

/// People of one team in the order in which they begin. `seconds` is when the team is expected home, `factor`
/// what its shared counts are multiplied by.
struct WorkTeam {
  std::vector<PersonId> people;
  std::vector<std::string> names;
  double seconds = 0;
  double factor = 1;
  bool operator==(const WorkTeam&) const = default;
};

/// Teams for one piece. The spread is between the first and the last team home, in the middle of the
/// rehearsal; 0 where nothing tells them apart.
struct TeamPlan {
  std::string piece;
  int size = 2;
  std::vector<WorkTeam> teams;
  double spread_s = 0;
  double spread_as_they_stand_s = 0;  // teams of neighbours in the order of the list
  std::vector<std::string> notes;
  bool operator==(const TeamPlan&) const = default;
};

}  // namespace repwright::domain
