#pragma once

#include <filesystem>
#include <optional>

#include "body/effort.hpp"
#include "store/body_file.hpp"
#include "store/catalogue_file.hpp"

/// The shipped catalogue and constants.
namespace repwright::body {

inline const domain::Catalogue& catalogue() {
  static const domain::Catalogue shipped =
      store::load_catalogue(std::filesystem::path(REPWRIGHT_SOURCE_DIR) / "data/catalogue", std::nullopt)
          .value();
  return shipped;
}

inline const Constants& shipped_constants() {
  static const Constants shipped =
      store::load_body_constants(std::filesystem::path(REPWRIGHT_SOURCE_DIR) / "data/body.toml", catalogue())
          .value();
  return shipped;
}

inline EffortSpec spec_of(const char* movement, domain::Unit unit = domain::Unit::Reps, double load = 0) {
  return effort_spec(*catalogue().find(domain::MovementId{movement}), unit, load, shipped_constants());
}

}  // namespace repwright::body
