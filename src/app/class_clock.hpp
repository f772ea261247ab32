#pragma once

#include <string>
#include <vector>

#include "app/gym_at_hand.hpp"
#include "timetable/cues.hpp"

/// What the clock of a class shows, from its board and who comes.
namespace repwright::app {

struct ClassClock {
  std::vector<timetable::Cue> cues;
  std::vector<std::vector<std::string>> lines;  // of each cue: the board's lines to do in it, as chalked
};

/// The clock of a class of the gym; no cues for a class without a board. Fails with NotFound where the class
/// or its board is not there, and as `who_comes`.
base::Result<ClassClock> class_clock(const GymAtHand& at_hand, const std::string& class_id);

}  // namespace repwright::app
