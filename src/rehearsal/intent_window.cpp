#include "rehearsal/intent_window.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "rehearsal/findings.hpp"

namespace repwright::rehearsal {

using domain::FitMeasure;
using domain::FitWindow;

std::optional<FitWindow> intended(const domain::Block& piece) {
  if (!piece.intent) return std::nullopt;
  const domain::Intent& intent = *piece.intent;
  if (intent.time) return FitWindow{FitMeasure::Seconds, intent.time->min, intent.time->max};
  if (intent.rounds) return FitWindow{FitMeasure::Rounds, intent.rounds->min, intent.rounds->max};
  if (intent.spare && piece.every)
    return FitWindow{FitMeasure::SpareSeconds, intent.spare->si(), std::nullopt};
  return std::nullopt;
}

bool measures(const FitWindow& window, const domain::PieceOutcome& outcome) {
  return window.measure != FitMeasure::Seconds || outcome.measure == domain::Measure::Seconds;
}

double miss(const FitWindow& window, double value) {
  if (value < window.min) return (window.min - value) / std::max(1.0, window.min);
  if (window.max && value > *window.max) return (value - *window.max) / std::max(1.0, *window.max);
  return 0;
}

double middle_of(const domain::PieceOutcome& outcome, const FitWindow& window, const domain::Block& piece) {
  switch (window.measure) {
    case FitMeasure::Seconds:
      return outcome.score.p50;
    case FitMeasure::Rounds:
      return outcome.reps_per_round > 0 ? outcome.score.p50 / outcome.reps_per_round
                                        : outcome.rounds.value_or(domain::Spread{}).p50;
    case FitMeasure::SpareSeconds:
      return outcome.interval_s.empty() || !piece.every
                 ? window.min
                 : piece.every->si() - std::ranges::max(outcome.interval_s);
  }
  return 0;
}

std::string window_words(const FitWindow& window) {
  switch (window.measure) {
    case FitMeasure::Seconds:
      if (!window.max) return clock_words(window.min) + " or longer";
      return window.min > 0 ? clock_words(window.min) + " to " + clock_words(*window.max)
                            : "inside " + clock_words(*window.max);
    case FitMeasure::Rounds:
      return window.max ? fmt::format("{:g} to {:g} rounds", window.min, *window.max)
                        : fmt::format("{:g} rounds or more", window.min);
    case FitMeasure::SpareSeconds:
      return fmt::format("{:.0f} s to spare", window.min);
  }
  return "";
}

std::string value_words(const FitWindow& window, double value) {
  switch (window.measure) {
    case FitMeasure::Seconds:
      return clock_words(value);
    case FitMeasure::Rounds:
      return fmt::format("{:.1f} rounds", value);
    case FitMeasure::SpareSeconds:
      return value < 0 ? fmt::format("{:.0f} s too long", -value) : fmt::format("{:.0f} s to spare", value);
  }
  return "";
}

}  // namespace repwright::rehearsal
