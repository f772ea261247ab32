#pragma once

#include <filesystem>
#include <optional>
#include <stdexcept>

#include "store/catalogue_file.hpp"

namespace repwright::support {

/// The catalogue of data/, read once.
inline const domain::Catalogue& shipped_catalogue() {
  static const domain::Catalogue catalogue = [] {
    auto loaded = store::load_catalogue(std::filesystem::path(REPWRIGHT_SOURCE_DIR) / "data" / "catalogue",
                                        std::nullopt);
    if (!loaded) throw std::runtime_error(loaded.error().message);
    return *loaded;
  }();
  return catalogue;
}

}  // namespace repwright::support
