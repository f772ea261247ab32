#pragma once

#include "domain/catalogue.hpp"

namespace repwright::domain {

/// Steps by ever easier versions from one movement to the other, on the shortest way; 0 if none leads there.
int steps_down(const Catalogue& catalogue, const MovementId& from, const MovementId& to);

}  // namespace repwright::domain
