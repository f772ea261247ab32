#pragma once

#include <string>

#include "domain/rehearsal.hpp"

namespace repwright::sheets {

/// What stands above a rehearsal: which session, which class, who.
struct RehearsalHead {
  std::string title;  // of the board
  std::string when;   // "Saturday 15 May 2027, 09:00"; empty: no date known
  int people = 0;
};

/// The rehearsal as a coach reads it in a terminal: the hour, what to know, one table per piece (score,
/// range, back from the run, waits, limiter), the places with their queues over time, and the caution line.
/// UTF-8, lines of at most 100 columns, ends with a line feed.
std::string rehearsal_text(const domain::Rehearsal& rehearsal, const RehearsalHead& head);

/// The one line of cautions that goes with every session (design: stop signs, local rules, licensed people
/// decide).
std::string caution_line();

}  // namespace repwright::sheets
