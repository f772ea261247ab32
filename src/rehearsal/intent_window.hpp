#pragma once

#include <optional>
#include <string>

#include "domain/board.hpp"
#include "domain/fit_plan.hpp"
#include "domain/rehearsal.hpp"

/// What a coach means a piece to be, against what it comes to.
namespace repwright::rehearsal {

/// What the board says of the piece; empty where it says nothing that a rehearsal could measure.
std::optional<domain::FitWindow> intended(const domain::Block& piece);

/// A miss beyond which somebody is said to miss an intent: less is the noise of the runs.
inline constexpr double clearly_off = 0.02;

/// Whether the outcome can be held against the window: seconds only where the piece is timed.
bool measures(const domain::FitWindow& window, const domain::PieceOutcome& outcome);

/// How far outside the window, as a share of its nearer end; 0 inside.
double miss(const domain::FitWindow& window, double value);

/// The middle of a person's runs in the measure of the window: the seconds to the end, the rounds with their
/// share of the next, or what the longest interval leaves.
double middle_of(const domain::PieceOutcome& outcome, const domain::FitWindow& window,
                 const domain::Block& piece);

/// `10:00 to 14:00`, `4 rounds or more`, `45 s to spare`.
std::string window_words(const domain::FitWindow& window);
/// `12:30`, `3.4 rounds`, `38 s to spare`.
std::string value_words(const domain::FitWindow& window, double value);

}  // namespace repwright::rehearsal
