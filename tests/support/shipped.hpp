#pragma once

#include <filesystem>
#include <stdexcept>

#include "domain/catalogue.hpp"
#include "store/catalogue_file.hpp"

namespace repwright::test {

/// The catalogue that is shipped, loaded once.
inline const domain::Catalogue& shipped_catalogue() {
  static const domain::Catalogue catalogue = [] {
    const std::filesystem::path folder = std::filesystem::path(REPWRIGHT_SOURCE_DIR) / "data" / "catalogue";
    auto loaded = store::load_catalogue(folder, std::nullopt);
    if (!loaded) throw std::runtime_error(loaded.error().message);
    return *loaded;
  }();
  return catalogue;
}

}  // namespace repwright::test
