#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "domain/rehearsal.hpp"

/// The written names of what a rehearsal finds: the same in JSON, on screens and in texts.
namespace repwright::domain {

std::string_view name_of(Measure measure);
std::string_view name_of(Limiter limiter);
std::string_view name_of(FindingKind kind);
std::string_view name_of(FindingSeverity severity);

/// Every kind of finding, in the order of the enumeration.
std::span<const FindingKind> all_finding_kinds();

}  // namespace repwright::domain
