#pragma once

#include <string>
#include <vector>

#include "domain/rehearsal.hpp"
#include "sheets/swaps_text.hpp"

namespace repwright::sheets {

/// What stands above a rehearsal, and what was decided before it: which session, which class, who.
struct RehearsalHead {
  std::string title;  // of the board
  std::string when;   // "Saturday 15 May 2027, 09:00"; empty: no date known
  int people = 0;
  std::vector<Swap> swaps;  // who does what instead of what is written
};

/// The rehearsal as a coach reads it in a terminal: what matters first, the hour, what else to know, who does
/// what instead, one table per piece, the places with their queues over time, and the caution line. UTF-8,
/// lines of at most 80 columns unless a name or a cell is longer, ends with a line feed.
std::string rehearsal_text(const domain::Rehearsal& rehearsal, const RehearsalHead& head);

/// The one line of cautions that goes with every session (design: stop signs, local rules, licensed people
/// decide).
std::string caution_line();

}  // namespace repwright::sheets
