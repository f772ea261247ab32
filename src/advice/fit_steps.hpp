#pragma once

#include <optional>

#include "domain/catalogue.hpp"
#include "domain/fitted.hpp"

/// Which of two ways of doing the same piece asks more of a person.
namespace repwright::advice {

/// How much harder `other` is than `own`, below 0 for easier; empty where they ask the same, or where one
/// line gets harder and another easier, or one line does not compare. A line is harder with more load, more
/// of it, or a movement of which its own is an easier version; a piece with more rounds. A step of the ladder
/// counts one, and so does about a third more of a load or a count.
std::optional<double> harder_by(const domain::Catalogue& catalogue, const domain::FittedPerson& own,
                                const domain::FittedPerson& other);

}  // namespace repwright::advice
