#pragma once

#include <optional>
#include <string>

#include "domain/catalogue.hpp"
#include "domain/people.hpp"

namespace repwright::store {

/// What was expected of a mark that nobody reaches ("at least 2:26"): a slip of the pen or a wrong column.
/// Nothing if the mark is believable. Wide on purpose: paces from a third of the catalogue's brisk pace (a
/// 400 m in 0:38, common practice), sets up to ten times a strong person's, loads up to five times heavy.
std::optional<std::string> why_out_of_bounds(const domain::Mark& mark, const domain::Catalogue& catalogue);

}  // namespace repwright::store
