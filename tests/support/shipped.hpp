#pragma once

#include <filesystem>
#include <stdexcept>

#include "body/constants.hpp"
#include "domain/catalogue.hpp"
#include "store/body_file.hpp"
#include "support/shipped_catalogue.hpp"
#include "support/source_dir.hpp"

namespace repwright::test {

/// The constants that are shipped, loaded once.
inline const body::Constants& shipped_constants() {
  static const body::Constants constants = [] {
    const std::filesystem::path file = source_dir() / "data" / "body.toml";
    auto loaded = store::load_body_constants(file, shipped_catalogue());
    if (!loaded) throw std::runtime_error(loaded.error().message);
    return *loaded;
  }();
  return constants;
}

}  // namespace repwright::test
