#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.hpp"
#include "domain/body_constants.hpp"
#include "domain/catalogue.hpp"

namespace repwright::store {

/// The constants of the body model in the text of a body.toml: `[model]` overrides single defaults, each
/// `[[movement]]` says what a movement of the catalogue costs. Fails with Invalid, naming every broken row at
/// once: file, line, id, field, what is wrong; a row whose movement the catalogue does not know is broken.
base::Result<domain::BodyConstants> read_body_constants(std::string_view bytes, const std::string& file,
                                                        const domain::Catalogue& catalogue);

/// The same from a file; fails also with NotFound or Unavailable if it cannot be read.
base::Result<domain::BodyConstants> load_body_constants(const std::filesystem::path& file,
                                                        const domain::Catalogue& catalogue);

}  // namespace repwright::store
