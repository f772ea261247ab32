#pragma once

#include "body/body.hpp"
#include "domain/board.hpp"

namespace repwright::rehearsal {

/// Seconds per unit that the line tells a person to hold back to: the tempo of a rep, a race pace of their
/// own
/// ("5k", "10k"), an easy run; 0 where nothing is said or the words are not known.
double held_pace(const domain::Item& item, const body::Body& body);

}  // namespace repwright::rehearsal
