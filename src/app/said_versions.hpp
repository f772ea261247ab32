#pragma once

#include <string>

#include "domain/catalogue.hpp"

namespace repwright::app {

/// The versions that a score names, as people say them: `run, kettlebell swing` for `run / kb-swing`. What is
/// no movement of the catalogue stays as it is.
std::string said_versions(const std::string& done, const domain::Catalogue& catalogue);

}  // namespace repwright::app
