#pragma once

#include <string>

#include "domain/body_constants.hpp"

/// The file of the body constants, rewritten with fitted numbers and nothing else changed.
namespace repwright::calibration {

/// `text` of a body.toml with every tunable as in `constants` (four digits) and `report`, line for line, in
/// place of the comment that the last calibration left at its head.
std::string with_constants(const std::string& text, const domain::BodyConstants& constants,
                           const std::string& report);

}  // namespace repwright::calibration
