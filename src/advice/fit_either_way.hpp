#pragma once

#include <vector>

#include "advice/fit_ways.hpp"

/// The next easier and harder way beside each person's own.
namespace repwright::advice {

/// The nearest way that asks less or more in every line that it changes.
struct NextStep {
  double by = 0;  // as `harder_by` counts; 0: there is none
  domain::FittedPerson fitted;
};
struct EitherWay {
  NextStep easier, harder;
};

/// Of what is one change away from a person's way, `own[person]`, the nearest that is easier and the nearest
/// that is harder: nothing harder than the board for who does less than it, nothing of which they have not
/// half a set in one go.
std::vector<EitherWay> either_way(const FitTask& task, const std::vector<FitChange>& singles,
                                  const std::vector<const FitOption*>& own,
                                  const rehearsal::ForEach& for_each);

}  // namespace repwright::advice
