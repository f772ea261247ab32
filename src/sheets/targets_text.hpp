#pragma once

#include <string>
#include <vector>

#include "domain/target.hpp"

namespace repwright::sheets {

/// What to write beside each piece, as a section of a page; empty without any.
std::string targets_text(const std::vector<domain::PieceTarget>& targets);

}  // namespace repwright::sheets
