#pragma once

#include <optional>

#include "advice/repairs.hpp"
#include "app/chalk_edit.hpp"
#include "rehearsal/rehearse.hpp"

namespace repwright::app {

/// What to cut first, as one change of the board: the cuts of the timetable in their order until nine of ten
/// such classes are over `by_s` seconds after the start, at most four. Chalked as `edit.text`; nothing where
/// no cut gives anything or one cannot be chalked. Fails as `trial` does.
base::Result<std::optional<domain::Edit>> cut_list(const Chalkboard& on, double by_s,
                                                   const advice::Trial& trial,
                                                   const rehearsal::ForEach& for_each);

}  // namespace repwright::app
