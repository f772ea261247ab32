#pragma once

#include <optional>
#include <string>
#include <vector>

#include "advice/fit_changes.hpp"
#include "base/result.hpp"
#include "domain/fit_plan.hpp"
#include "domain/fitted.hpp"
#include "domain/solver.hpp"
#include "rehearsal/cast.hpp"
#include "rehearsal/plain_fit.hpp"
#include "rehearsal/rehearse.hpp"
#include "timetable/timetable.hpp"

namespace repwright::advice {

/// One piece for the people of a class; what it points to must outlive the call. `plain.board` is the whole
/// board, `plain.bodies` are those of `cast`.
struct FitTask {
  const rehearsal::PlainFitRequest& plain;
  const rehearsal::Cast& cast;
  const domain::GymClass& gym_class;
  const domain::Hall& hall;
  const domain::Block& piece;
  std::optional<domain::FitWindow> window;
  domain::SolveLimits solve{};
};

/// One way of doing the piece, and what a lone person makes of it.
struct FitOption {
  FitChange change;
  domain::FittedPerson fitted;  // the lines of the piece only
  double expected = 0;          // in the measure of the window; seconds or rounds without one
};
/// The nearest way that asks less or more in every line that it changes.
struct NextStep {
  double by = 0;  // as `harder_by` counts; 0: there is none
  domain::FittedPerson fitted;
};
/// One person's way, and the next easier and harder one.
struct ChosenFit {
  FitOption own;
  NextStep easier, harder;
  bool inside = true;  // the window, as expected
};
struct FittedPiece {
  std::vector<ChosenFit> people;
  std::vector<std::string> short_of;  // kit
};

/// What the intent of a piece asks for; its cap where the board intends nothing and it is done for time.
std::optional<domain::FitWindow> window_of(const domain::Block& piece);

/// For everybody the smallest change with which a lone pass ends inside the window, a little off its ends;
/// where none does, the nearest. Kit of which the shelf counts every size is given out to the whole class at
/// once, as a whole-number model; what is still short is named. Limits hold, because every way goes through
/// the plain fit. Same arguments, same answer, whatever `for_each` does. Fails as the solver does.
base::Result<FittedPiece> fit_piece(const FitTask& task, domain::Solver& solver,
                                    const rehearsal::ForEach& for_each);

}  // namespace repwright::advice
