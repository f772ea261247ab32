#pragma once

#include <string>
#include <string_view>

#include "domain/catalogue.hpp"

/// Movements in a coach's sentences.
namespace repwright::domain {

/// One of it: 'kettlebell swing', 'row'.
std::string spoken_one(const Movement& movement);
/// Several of it: 'kettlebell swings', 'burpees over the bar', 'toes-to-bar'.
std::string spoken_many(const Movement& movement);

/// The plural of an English name: its head, the word before the first 'to', 'over', 'with' ..., is made many.
std::string plural(std::string_view name);

}  // namespace repwright::domain
