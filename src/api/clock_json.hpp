#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vector>

#include "app/class_clock.hpp"
#include "timetable/running_clock.hpp"

namespace repwright::api {

/// A clock and all that was done to it, at one instant.
struct ClockMoment {
  const app::ClassClock& clock;
  const std::vector<domain::ClockAct>& acts;
  std::int64_t now_ms = 0;
};

/// As `get_clock` answers, without the class.
nlohmann::ordered_json clock_json(const ClockMoment& moment);

}  // namespace repwright::api
