#pragma once

#include <stdexcept>

#include "domain/catalogue.hpp"
#include "store/catalogue_file.hpp"
#include "support/source_dir.hpp"

namespace repwright::test {

/// The catalogue of this source tree, read once.
inline const domain::Catalogue& shipped_catalogue() {
  static const domain::Catalogue catalogue = [] {
    auto read = store::load_catalogue(source_dir() / "data/catalogue", std::nullopt);
    if (!read) throw std::runtime_error(read.error().message);
    return *std::move(read);
  }();
  return catalogue;
}

}  // namespace repwright::test
