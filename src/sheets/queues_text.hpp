#pragma once

#include <string>

#include "domain/rehearsal.hpp"

namespace repwright::sheets {

/// The places that people wait for, each with its queue over the class as a strip, and those that nobody
/// waits for in one line. UTF-8, ends with a line feed; empty without places.
std::string queues_text(const domain::Rehearsal& rehearsal);

}  // namespace repwright::sheets
