#include "advice/fit_ways.hpp"

#include <algorithm>
#include <utility>

#include "rehearsal/intent_window.hpp"
#include "rehearsal/write_script.hpp"

namespace repwright::advice {
namespace {

using domain::FitMeasure;
using domain::FitWindow;

constexpr double off_the_ends = 0.06;  // of the window's ends, for a bad day
constexpr double per_miss = 300;       // of a window's end, beside the size of a change
constexpr double per_near_miss = 60;

/// The window without its outermost part.
FitWindow inner(FitWindow window) {
  window.min *= 1 + off_the_ends;
  if (window.max) window.max = std::max(window.min, *window.max * (1 - off_the_ends));
  return window;
}

/// What these people make of the changed piece, each alone.
std::vector<FitOption> tried(const FitTask& task, const Some& some, const FitChange& change) {
  const domain::Board board = board_alone(task, change);
  domain::FittedBoard fitted = fitted_board(task, some, board);
  const timetable::Timetable timetable = timetable::lay_out(board, {});
  const std::optional<int> rounds = board.blocks.front().rounds;
  std::vector<FitOption> options;
  if (timetable.pieces.empty()) return options;
  rehearsal::MiddlingParts parts = rehearsal::lone_pass(floor_plan(task, some, fitted, timetable), timetable,
                                                        task.plain.constants, some.cast);
  for (std::size_t p = 0; p < some.people.size(); ++p) {
    FitOption& option = options.emplace_back();
    option.change = change;
    option.fitted = std::move(fitted.people[p]);
    if (rounds && rounds != task.piece.rounds) option.fitted.rounds[task.piece.id] = *rounds;
    option.alone = std::move(parts[0][p]);
    option.expected = expected_of(task, option.alone);
  }
  return options;
}

}  // namespace

Some some_of(const FitTask& task, const std::vector<int>& places) {
  Some some;
  some.places = places;
  some.cast.conditions = task.cast.conditions;
  for (const int place : places) {
    const auto p = static_cast<std::size_t>(place);
    some.people.push_back(task.plain.people[p]);
    some.cast.ids.push_back(task.cast.ids[p]);
    some.cast.names.push_back(task.cast.names[p]);
    some.cast.median.push_back(task.cast.median[p]);
  }
  if (task.cast.stretch)
    some.cast.stretch = [&all = task.cast.stretch, places](domain::BlockId piece, int person, int run) {
      return all(piece, places[static_cast<std::size_t>(person)], run);
    };
  return some;
}

domain::Board board_alone(const FitTask& task, const FitChange& change) {
  domain::Block own = changed(task.piece, change, task.plain.catalogue);
  own.cap.reset();
  own.heats.reset();
  own.start.reset();
  return {.title = {}, .blocks = {std::move(own)}};
}

domain::FittedBoard fitted_board(const FitTask& task, const Some& some, const domain::Board& board) {
  const rehearsal::PlainFitRequest plain{.board = board,
                                         .catalogue = task.plain.catalogue,
                                         .house = task.plain.house,
                                         .people = some.people,
                                         .bodies = some.cast.median,
                                         .constants = task.plain.constants,
                                         .date = task.plain.date,
                                         .rule = task.plain.rule,
                                         .hall = task.plain.hall,
                                         .gone = task.plain.gone};
  return rehearsal::plain_fit(plain);
}

rehearsal::FloorPlan floor_plan(const FitTask& task, const Some& some, const domain::FittedBoard& fitted,
                                const timetable::Timetable& timetable) {
  rehearsal::WrittenFloor floor = rehearsal::write_scripts({.fitted = fitted,
                                                            .timetable = timetable,
                                                            .catalogue = task.plain.catalogue,
                                                            .hall = task.hall,
                                                            .house = task.plain.house,
                                                            .gym_class = task.gym_class,
                                                            .people = some.people,
                                                            .bodies = some.cast.median,
                                                            .constants = task.plain.constants});
  // The piece alone begins at once: who comes late to the class has come long since.
  std::ranges::fill(floor.plan.late, 0.0);
  return std::move(floor.plan);
}

double expected_of(const FitTask& task, const rehearsal::MiddlingPart& part) {
  const FitMeasure measure = task.window           ? task.window->measure
                             : task.piece.duration ? FitMeasure::Rounds
                                                   : FitMeasure::Seconds;
  switch (measure) {
    case FitMeasure::Seconds:
      return part.seconds;
    case FitMeasure::Rounds:
      return part.rounds;
    case FitMeasure::SpareSeconds:
      return task.piece.every.value_or(base::Duration{}).si() - part.longest_lap_s;
  }
  return 0;
}

void add_ways(const FitTask& task, const std::vector<int>& places, const std::vector<FitChange>& changes,
              Ways& ways, const rehearsal::ForEach& for_each) {
  const Some some = some_of(task, places);
  std::vector<std::vector<FitOption>> found(changes.size());
  for_each(static_cast<int>(changes.size()), [&](int c) {
    const auto at = static_cast<std::size_t>(c);
    found[at] = tried(task, some, changes[at]);
  });
  for (std::vector<FitOption>& options : found)
    for (std::size_t p = 0; p < options.size(); ++p) {
      std::vector<FitOption>& own = ways[static_cast<std::size_t>(places[p])];
      const bool known =
          std::ranges::any_of(own, [&](const FitOption& one) { return one.fitted == options[p].fitted; });
      if (!known) own.push_back(std::move(options[p]));
    }
}

double miss_cost(const FitTask& task, double expected) {
  if (!task.window) return 0;
  return per_miss * rehearsal::miss(*task.window, expected) +
         per_near_miss * rehearsal::miss(inner(*task.window), expected);
}

bool is_inside(const FitTask& task, double expected) {
  return !task.window || rehearsal::miss(*task.window, expected) <= 0;
}

}  // namespace repwright::advice
