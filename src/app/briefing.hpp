#pragma once

#include <string>
#include <vector>

#include "base/quantity.hpp"

namespace repwright::app {

/// How long a coach of so many words a minute takes to say these sentences, rounded up to ten seconds.
base::Duration briefing_length(const std::vector<std::string>& sentences, int words_per_minute);

}  // namespace repwright::app
