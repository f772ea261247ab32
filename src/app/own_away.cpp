#include "app/own_away.hpp"

#include <algorithm>

#include "app/own_today.hpp"

namespace repwright::app {

base::Result<domain::AwayPlan> own_away(const GymAtHand& at_hand, std::chrono::year_month_day today,
                                        const AwayWishes& wishes, domain::Solver& solver,
                                        const std::stop_token& stop) {
  const OpenGym& gym = at_hand.gym();
  const domain::GymClass* gym_class = own_class(gym, domain::PersonId{wishes.who.value_or("")}, today);
  if (gym_class == nullptr)
    return base::failure(base::ErrorCode::NotFound, "you are on the list of no class ahead");
  const auto board = gym.knowledge.boards.find(gym_class->board_id);
  if (board == gym.knowledge.boards.end())
    return base::failure(base::ErrorCode::Invalid, "your next class has no board yet");
  const board::Reading reading = at_hand.read(board->second);
  const bool unread = std::ranges::any_of(reading.diagnostics, [](const domain::Diagnostic& each) {
    return each.severity == domain::Severity::Error;
  });
  if (unread) return base::failure(base::ErrorCode::Invalid, "the board of your next class is not finished");
  WhatIf what;
  what.stop = stop;
  return away_class(knowing_request(at_hand, reading, *gym_class, what).request, wishes, solver);
}

}  // namespace repwright::app
