#pragma once

#include "body/effort.hpp"
#include "support/shipped.hpp"

/// The shipped catalogue and constants.
namespace repwright::body {

inline const domain::Catalogue& catalogue() {
  return test::shipped_catalogue();
}

inline const Constants& shipped_constants() {
  return test::shipped_constants();
}

inline EffortSpec spec_of(const char* movement, domain::Unit unit = domain::Unit::Reps, double load = 0) {
  return effort_spec(*catalogue().find(domain::MovementId{movement}), unit, load, shipped_constants());
}

}  // namespace repwright::body
