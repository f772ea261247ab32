#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/rehearse_class.hpp"
#include "domain/solver.hpp"
#include "domain/team_plan.hpp"

namespace repwright::app {

/// Two people, by name or id, who are not to be in one team: the same pair as last time, or by wish.
using Apart = std::pair<std::string, std::string>;

/// `ONE+OTHER`; nothing for another form.
std::optional<Apart> apart_of(const std::string& text);

/// Who of the class works with whom so that all teams end together, in the board's first piece for teams;
/// where it has none, in pairs for its last piece. Everybody's pace in it comes from a rehearsal alone, on a
/// floor where nobody waits. Fails as `rehearse_class` does, and with NotFound for somebody in `apart` who is
/// not there; as the solver does.
base::Result<domain::TeamPlan> team_class(const ClassRequest& request, const std::vector<Apart>& apart,
                                          domain::Solver& solver);

}  // namespace repwright::app
