#pragma once

#include <chrono>
#include <string>

#include "app/open_gym.hpp"

namespace repwright::app {

/// The id of the first class on or after that day, by date, start and id; empty if none is planned.
std::string next_class(const OpenGym& gym, std::chrono::year_month_day today);

/// Whether the gym says of itself that it is made up, as the demo does: '(invented)' in its hall's name.
bool is_invented(const OpenGym& gym);

}  // namespace repwright::app
