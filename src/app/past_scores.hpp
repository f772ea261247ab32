#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <utility>
#include <vector>

#include "app/open_gym.hpp"

namespace repwright::app {

/// One score of a person, beside what a rehearsal of that session forecasts for them.
struct PastScore {
  domain::ScoreEntry entry;
  std::string title;                             // of the board; its id where it has none
  std::optional<domain::PieceOutcome> forecast;  // without steps; nothing where the gym has no such piece
  std::optional<double> value;                   // the score in the forecast's measure, where it can be said
  /// What the same body gives on four days in five around that score, in the same measure.
  std::optional<std::pair<double, double>> days;
};

/// The latest scores of a person, the latest first, `most` at most. Every session whose board the gym still
/// has is rehearsed again with those who scored in it and the marks that they have now, so the forecast does
/// not say what was known that day. Empty for somebody without scores.
std::vector<PastScore> past_scores(const OpenGym& gym, const domain::PersonId& person, std::size_t most,
                                   const std::stop_token& stop);

}  // namespace repwright::app
