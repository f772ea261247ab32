#pragma once

#include <string>
#include <vector>

#include "app/rehearse_class.hpp"
#include "base/quantity.hpp"
#include "domain/gym_class.hpp"

namespace repwright::app {

/// How long a coach of so many words a minute takes to say these sentences, rounded up to ten seconds.
base::Duration briefing_length(const std::vector<std::string>& sentences, int words_per_minute);

/// Gives the class a briefing as long as its board takes to be read out, unless it has one of its own.
void brief_at(domain::GymClass& gym_class, int words_per_minute, const domain::Board& board,
              const GymKnowledge& gym);

}  // namespace repwright::app
