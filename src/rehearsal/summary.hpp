#pragma once

#include <vector>

#include "rehearsal/rehearse.hpp"
#include "rehearsal/run_table.hpp"

namespace repwright::rehearsal {

struct SummaryRequest {
  const RehearsalRequest& request;
  const RunTable& table;  // all runs
  const RunTable& days;   // the middle bodies on other days
  const Tally& sums;
  const std::vector<std::vector<domain::Measure>>& measures;  // [piece][person]
};

/// The runs in figures; no findings yet.
domain::Rehearsal summarise(const SummaryRequest& request);

/// What holds a person back in a piece, from where their time goes: docs/decisions/limiter.md.
domain::Limiter limiter_of(const Losses& losses);

}  // namespace repwright::rehearsal
