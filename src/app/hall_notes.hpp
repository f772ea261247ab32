#pragma once

#include <string>
#include <vector>

#include "domain/hall.hpp"
#include "domain/rehearsal.hpp"

/// What a coach must know of the hall before they read what was computed for it.
namespace repwright::app {

/// Says that the hall lists nothing, if so; else empty.
std::vector<std::string> hall_notes(const domain::Hall& hall);

/// The same, and behind it by how much the hall is too full for those who come.
std::vector<std::string> hall_notes(const domain::Hall& hall, const domain::Rehearsal& rehearsal);

}  // namespace repwright::app
