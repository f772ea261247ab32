#pragma once

#include "api/route_table.hpp"

namespace repwright::api {

/// Who stands where in the pieces of a class, for the coaches and the screen:
/// `{"pieces": [{"piece", "title", "heats", "lanes", "people": [{"id", "name", "heat", "place", "starts_s",
/// "with"}]}]}`; `piece` counts the pieces of the clock, `heat` and `place` from 0. Pieces without heats,
/// lanes, groups or teams are left out.
Answer get_line_up(const Call& call);

}  // namespace repwright::api
