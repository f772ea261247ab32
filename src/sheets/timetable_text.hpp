#pragma once

#include <string>

#include "domain/rehearsal.hpp"
#include "timetable/timetable.hpp"

namespace repwright::sheets {

/// The class box by box as planned, with the clock edges of the pieces that have them. UTF-8, ends with a
/// line feed.
std::string timetable_text(const timetable::Timetable& timetable);

/// The same as rehearsed: when each box really begins and ends.
std::string hour_text(const domain::ClassOutcome& hour);

}  // namespace repwright::sheets
