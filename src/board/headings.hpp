#pragma once

#include "board/session.hpp"

/// Lines that open a part of the class: titles, levels, windows, headings.
namespace repwright::board {

/// Whether that text, alone on the first line, would be read back as a title and nothing else.
bool reads_as_title(Session&, Cursor cursor);

/// Day, date, kind of class, whole length on the first line. Leaves the cursor where work begins.
void read_title(Session&, Cursor&);
/// `A / B / C`.
bool read_level_header(Session&, const Cursor&);
/// `0-10 ...`, `3:00-12:00 ...`.
bool read_window(Session&, Cursor&);
/// `0:00 50 wall balls` above `5:00 30 cal row`: each start is a window up to the next one.
bool read_start_time(Session&, Cursor&);
/// Whether the line begins with the start of the clock: `0:00 ...`.
bool begins_at_nothing(Cursor cursor);
/// `Warm-up 10' (coach): ...`, `Str 12'`, `PIECE A - ...`.
bool read_heading(Session&, Cursor&);

/// The part that the words at the cursor name, without taking anything.
Part part_at(const Cursor& cursor);
/// How many marks those words take; 0 if they name none.
std::size_t part_reach(const Cursor& cursor);

}  // namespace repwright::board
