#pragma once

#include <string>
#include <vector>

#include "domain/board.hpp"
#include "domain/house.hpp"

/// Numbers as they are chalked, so that reading them gives the same value to the last bit.
namespace repwright::board {

/// The shortest decimal text of that very number.
std::string chalk_number(double value);

/// `45 s`, `18 min`, `2:30`.
std::string chalk_time(base::Duration time);

/// `24/16 kg`, `53/35 lb`: the house's unit where it holds every load exactly, else one that does.
std::string chalk_loads(const std::vector<base::Mass>& masses, const domain::House& house);

/// `60/50 cm`, `20 in`.
std::string chalk_heights(const std::vector<base::Length>& heights);

}  // namespace repwright::board
