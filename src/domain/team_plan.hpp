#pragma once

#include <string>
#include <vector>

#include "domain/ids.hpp"
#include "domain/rehearsal.hpp"

/// Who works with whom.
namespace repwright::domain {

/// People of one team in the order in which they begin. `expected` is their middle score, `factor` what the
/// shared counts are multiplied by.
struct WorkTeam {
  std::vector<PersonId> people;
  std::vector<std::string> names;
  double expected = 0;
  double factor = 1;
  bool operator==(const WorkTeam&) const = default;
};

/// Teams for one piece. A spread is between the best and the last team of one run, half of the runs more, in
/// the measure of the piece.
struct TeamPlan {
  std::string piece;
  Measure measure = Measure::Seconds;
  int size = 2;
  bool rehearsed = true;  // else by everybody's pace alone
  std::vector<WorkTeam> teams;
  double spread = 0;
  double spread_as_they_stand = 0;  // teams of neighbours in the order of the list
  std::vector<std::string> notes;
  bool operator==(const TeamPlan&) const = default;
};

}  // namespace repwright::domain
