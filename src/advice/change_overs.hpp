#pragma once

#include <string>
#include <vector>

#include "domain/catalogue.hpp"
#include "domain/hour_plan.hpp"
#include "rehearsal/kit_demand.hpp"

namespace repwright::advice {

/// What change-overs are planned from: the needs of all pieces, what the pieces are called, and how many bars
/// get another load before each piece (as many as pieces).
struct ChangeTask {
  const std::vector<rehearsal::KitNeed>& needs;
  const std::vector<std::string>& pieces;
  const std::vector<int>& bars_reloaded;
  const domain::Catalogue& catalogue;
};

/// What is set out before the first piece, and what stays, comes and goes before each other one, as far as
/// the hall lists kit. Seconds are those of a class that fetches for itself: one person 30 to 45 s, sixteen
/// 75 to 120 s for a light thing, a bar 60 to 90 s alone and 150 to 240 s for twelve, other plates on a built
/// bar 40 to 70 s (common practice, no source).
std::vector<domain::ChangeOver> change_overs(const ChangeTask& task);

}  // namespace repwright::advice
