#pragma once

#include <string>
#include <string_view>

#include "domain/board.hpp"
#include "timetable/timetable.hpp"

/// Words for boxes: which part of the class a coach's words mean, and what a piece is called.
namespace repwright::timetable {

/// The part of the class that is named first in the words; `otherwise` if none is.
BoxKind box_kind(std::string_view words, BoxKind otherwise);

/// A plain name by kind and length ("AMRAP 11:00"), for a piece whose text gives none.
std::string piece_name(const domain::Block& block);

/// What a box of that kind is called on screens.
std::string box_name(BoxKind kind);

}  // namespace repwright::timetable
