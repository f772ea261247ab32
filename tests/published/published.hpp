#pragma once

#include <string>
#include <vector>

#include "calibration/studies.hpp"

/// What the checks against published measurements share.
namespace repwright::published {

/// Prints the measured value with both bands. Fails outside `accept` unless the check is listed in
/// not_yet_met.txt, and fails inside it if it is listed there still. True if a listed check was missed.
bool expected_miss(const calibration::Measured& measured);

/// Several checks of one study: skips at the end if a listed one is still missed.
class Study {
 public:
  void check(const calibration::Measured& measured) {
    if (expected_miss(measured)) missed_ += (missed_.empty() ? "" : ", ") + measured.name;
  }
  const std::string& missed() const { return missed_; }

 private:
  std::string missed_;
};

const std::vector<std::string>& not_yet_met();

const domain::Catalogue& catalogue();
const domain::BodyConstants& constants();

}  // namespace repwright::published
