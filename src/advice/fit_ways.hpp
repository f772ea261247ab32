#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "advice/fit_changes.hpp"
#include "base/result.hpp"
#include "domain/fit_plan.hpp"
#include "domain/fitted.hpp"
#include "domain/gym_class.hpp"
#include "domain/solver.hpp"
#include "rehearsal/cast.hpp"
#include "rehearsal/lone_pass.hpp"
#include "rehearsal/plain_fit.hpp"
#include "rehearsal/rehearse.hpp"
#include "timetable/timetable.hpp"

/// The ways in which each of a class may do a piece, and what a lone person makes of each.
namespace repwright::advice {

/// How many runs a trial takes: some, or as many as are shown in the end.
enum class Care : std::uint8_t { Rough, Full };
/// What the whole class comes to when everybody does the piece so: of each the share of runs inside.
using InsideTrial = std::function<base::Result<std::vector<double>>(
    const std::vector<domain::FittedPerson>& people, Care care)>;

/// One piece for the people of a class; what it points to must outlive the call. `plain.board` is the whole
/// board, `plain.bodies` are those of `cast`.
struct FitTask {
  const rehearsal::PlainFitRequest& plain;
  const rehearsal::Cast& cast;
  const domain::GymClass& gym_class;
  const domain::Hall& hall;
  const domain::Block& piece;
  std::optional<domain::FitWindow> window;
  InsideTrial inside{};  // rehearses the class; none: a pass without luck is believed
  domain::SolveLimits solve{};
};

/// One way of doing the piece, and what a lone person makes of it.
struct FitOption {
  FitChange change;
  domain::FittedPerson fitted;  // the lines of the piece only
  double expected = 0;          // in the measure of the window; seconds or rounds without one
  rehearsal::MiddlingPart alone{};
};

/// [person][way], without ways that come to the same; the first is the board as it is.
using Ways = std::vector<std::vector<FitOption>>;

/// The people whom something is tried with.
struct Some {
  rehearsal::Cast cast;
  std::vector<domain::Person> people;
  std::vector<int> places;  // in the class
};
Some some_of(const FitTask& task, const std::vector<int>& places);

/// The piece as a board of its own: without the cap, so that a slow way shows how slow it is, and with
/// everybody starting at once.
domain::Board board_alone(const FitTask& task, const FitChange& change);
/// The plain fit of these people to such a board.
domain::FittedBoard fitted_board(const FitTask& task, const Some& some, const domain::Board& board);
/// What the floor plays of such a board; nobody is late.
rehearsal::FloorPlan floor_plan(const FitTask& task, const Some& some, const domain::FittedBoard& fitted,
                                const timetable::Timetable& timetable);

/// In the measure of the window.
double expected_of(const FitTask& task, const rehearsal::MiddlingPart& part);

/// Adds what the people at these places of the class make of the changes, each alone.
void add_ways(const FitTask& task, const std::vector<int>& places, const std::vector<FitChange>& changes,
              Ways& ways, const rehearsal::ForEach& for_each);

/// What it costs that a piece comes to so much: 0 well inside the window.
double miss_cost(const FitTask& task, double expected);
/// Whether so much is inside the window.
bool is_inside(const FitTask& task, double expected);

}  // namespace repwright::advice
