#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advice/fit_either_way.hpp"
#include "advice/fit_ways.hpp"
#include "base/result.hpp"
#include "domain/solver.hpp"
#include "rehearsal/rehearse.hpp"

namespace repwright::advice {

/// One person's way, and the next easier and harder one. `own.expected` is what it comes to with everybody on
/// the floor.
struct ChosenFit {
  FitOption own;
  NextStep easier, harder;
  double alone = 0;     // what it would come to without anybody in the way
  double waited_s = 0;  // for places
  bool inside = true;   // the window, as expected
};
struct FittedPiece {
  std::vector<ChosenFit> people;
  std::vector<std::string> short_of;          // kit
  std::vector<std::string> written_short_of;  // with everybody doing the board as it is
};

/// What the intent of a piece asks for; its cap where the board intends nothing and it is done for time.
std::optional<domain::FitWindow> window_of(const domain::Block& piece);

/// For everybody the smallest change with which the piece ends inside the window, a little off its ends;
/// where none does, the nearest. Kit of which the shelf counts every size is given out to the whole class at
/// once, as a whole-number model; what is still short is named. Where people would queue, places are shared
/// out, too: with the waits seen on one floor. Of what comes of it, and the board as it is, that with most
/// people inside is taken, by `task.inside`. Limits hold, because every way goes through the plain fit. Same
/// arguments, same answer, whatever `for_each` does. Fails as the solver and the trial do.
base::Result<FittedPiece> fit_piece(const FitTask& task, domain::Solver& solver,
                                    const rehearsal::ForEach& for_each);

}  // namespace repwright::advice
