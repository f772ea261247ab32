#pragma once

#include <string>
#include <vector>

#include "base/result.hpp"
#include "domain/catalogue.hpp"

namespace repwright::app {

/// Kit by its ids; fails with NotFound, naming what there is, where nothing is called so.
base::Result<std::vector<domain::EquipmentId>> kit_named(const std::vector<std::string>& ids,
                                                         const domain::Catalogue& catalogue);

}  // namespace repwright::app
