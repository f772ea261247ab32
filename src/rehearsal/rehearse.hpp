#pragma once

#include <cstdint>
#include <functional>
#include <stop_token>

#include "base/random.hpp"
#include "base/result.hpp"
#include "body/constants.hpp"
#include "domain/rehearsal.hpp"
#include "rehearsal/cast.hpp"
#include "rehearsal/script.hpp"
#include "rehearsal/tally.hpp"
#include "timetable/timetable.hpp"

namespace repwright::rehearsal {

/// A loop over 0 .. count - 1, in any order and on any number of threads. Threads live above this layer.
using ForEach = std::function<void(int count, const std::function<void(int)>& one)>;

void one_after_another(int count, const std::function<void(int)>& one);

/// What is rehearsed; what it points to must outlive the call.
struct RehearsalRequest {
  const FloorPlan& plan;
  const timetable::Timetable& timetable;
  const body::Constants& constants;
  const Cast& cast;
  base::Seed seed;
  int runs = 200;
  Keep keep = Keep::Sums;
  std::stop_token stop;
};

/// Plays the class `runs` times, another body and another day for each person in each run, and sums up. Same
/// arguments, same bytes, whatever `for_each` does. Findings are left to `find`. Fails with Invalid when
/// nobody is there or runs are fewer than one, with Stopped when `stop` is requested before the last run.
base::Result<domain::Rehearsal> rehearse(const RehearsalRequest& request,
                                         const ForEach& for_each = one_after_another);

}  // namespace repwright::rehearsal
