#pragma once

#include <optional>
#include <string>

#include "advice/away.hpp"
#include "app/rehearse_class.hpp"
#include "domain/away_plan.hpp"
#include "domain/solver.hpp"

namespace repwright::app {

struct AwayWishes {
  advice::AwayPlace place;
  std::optional<std::string> who;        // name or id; empty: somebody of whom nothing is known
  std::optional<base::Duration> length;  // at most; empty: as long as the board
};

/// The board for one person at another place: each line by what is possible there, so many of it that it
/// takes the person as long, and a warm-up without the hall, then as chalk to send. Fails with Invalid when
/// the board has no work or nothing of it is possible there, with NotFound for a person whom nobody knows.
base::Result<domain::AwayPlan> away_class(const ClassRequest& request, const AwayWishes& wishes,
                                          domain::Solver& solver);

}  // namespace repwright::app
