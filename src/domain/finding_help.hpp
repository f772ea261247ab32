#pragma once

#include <string_view>

#include "domain/rehearsal.hpp"

namespace repwright::domain {

/// What a coach may chalk or do about a finding, as it goes on after 'May help: '; chalk in backticks, no
/// full stop. Nothing was tried out. Empty where nothing of that kind helps, or nothing has to be done.
std::string_view help_with(FindingKind kind);

}  // namespace repwright::domain
