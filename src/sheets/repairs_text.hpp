#pragma once

#include <string>

#include "domain/repair.hpp"

namespace repwright::sheets {

/// Repairs as a coach reads them in a terminal: doing nothing first, then each with what to say, what to
/// chalk and what it does to waiting, finishing, the end of the class and the work. UTF-8, ends with a line
/// feed.
std::string repairs_text(const domain::RepairPlan& plan);

}  // namespace repwright::sheets
