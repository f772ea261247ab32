#pragma once

#include <chrono>
#include <stop_token>

#include "app/away_class.hpp"
#include "app/gym_at_hand.hpp"
#include "base/result.hpp"

namespace repwright::app {

/// The next class from that day on of the person whose id is `wishes.who`, for them alone at another place.
/// Fails with NotFound where they are on no list, with Invalid where the class has no board that can be
/// rehearsed, and as `away_class`.
base::Result<domain::AwayPlan> own_away(const GymAtHand& at_hand, std::chrono::year_month_day today,
                                        const AwayWishes& wishes, domain::Solver& solver,
                                        const std::stop_token& stop);

}  // namespace repwright::app
