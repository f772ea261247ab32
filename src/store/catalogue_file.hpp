#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/catalogue.hpp"

namespace repwright::store {

/// One file of rows: its name, for messages, and its text.
struct CatalogueText {
  std::string file;
  std::string bytes;
};

/// The catalogue of these files, a gym's own file on top if there is one; movements sorted by id. Fails with
/// Invalid, naming every broken row at once: file, line, id, field, what is wrong, what was expected.
base::Result<domain::Catalogue> read_catalogue(const std::vector<CatalogueText>& shipped,
                                               const std::optional<CatalogueText>& own);

/// The same from every *.toml of `folder` (docs/guide/catalogue.md) and the gym's own movements file.
/// Fails also with NotFound or Unavailable if a file cannot be read.
base::Result<domain::Catalogue> load_catalogue(const std::filesystem::path& folder,
                                               const std::optional<std::filesystem::path>& gyms_own);
/// The same with the gym's own movements as text.
base::Result<domain::Catalogue> load_catalogue_with(const std::filesystem::path& folder,
                                                    const std::optional<CatalogueText>& own);

}  // namespace repwright::store
