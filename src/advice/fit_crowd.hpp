#pragma once

#include <vector>

#include "advice/fit_sharing.hpp"

/// Ways for people who stand in each other's way: places are shared like kit.
namespace repwright::advice {

/// What everybody does, and what it comes to with everybody on the floor.
struct TogetherChoice {
  std::vector<const FitOption*> ways;
  std::vector<double> expected;  // in the measure of the window
  std::vector<double> waited_s;  // for places
  double cost = 0;               // of all changes, misses and kit that is short
};

/// What a choice comes to on one floor, without luck.
TogetherChoice together(const FitTask& task, std::vector<const FitOption*> ways, KitBook& kit);

/// Whether anybody stands in a queue long enough to matter.
bool is_crowded(const TogetherChoice& choice);

/// The best that was found of choosing again and again among the ways of the book, each time with the waits
/// seen before taken off what everybody has, then of letting single people do another of their ways. Never
/// costs more than `from` or than the board as it is. Fails as the solver does.
base::Result<TogetherChoice> best_together(const FitTask& task, TogetherChoice from, KitBook& kit,
                                           domain::Solver& solver, const rehearsal::ForEach& for_each);

}  // namespace repwright::advice
