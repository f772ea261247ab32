#pragma once

#include <span>
#include <string>

#include "domain/rehearsal.hpp"

namespace repwright::sheets {

/// What the coach should know: the first three on their own, then the rest, of each kind together. The order
/// is the caller's. Swaps are left out: `swaps_text` has them. UTF-8, ends with a line feed.
std::string findings_text(std::span<const domain::Finding> findings);

}  // namespace repwright::sheets
