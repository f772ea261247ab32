#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "app/gym_at_hand.hpp"
#include "base/result.hpp"

/// When a rehearsal expects people home in a piece for time.
namespace repwright::app {

/// One heat of a piece: seconds from the heat's signal. Middles over the runs; `last_late_s` is not passed in
/// nine runs of ten.
struct DueHome {
  int piece = 0;  // of the timetable
  int heat = 0;
  int people = 0;
  double first_s = 0, middle_s = 0, last_s = 0, last_late_s = 0;
  /// A good moment for the last call: nine in ten are home, and the last would still take a minute and more.
  std::optional<double> call_s;
  int out_at_call = 0;  // so many are usually still at it then
};

/// Of every heat of every piece that people do in their own time against the clock. Fails with NotFound for a
/// class or a board that is not there, and as `rehearse_class`.
base::Result<std::vector<DueHome>> due_home(const GymAtHand& at_hand, const std::string& class_id,
                                            const std::stop_token& stop);

}  // namespace repwright::app
