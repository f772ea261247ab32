#include "domain/rehearsal_names.hpp"

#include <array>

namespace repwright::domain {

std::string_view name_of(Measure measure) {
  switch (measure) {
    case Measure::Seconds:
      return "seconds";
    case Measure::Reps:
      return "reps";
    case Measure::Kilograms:
      return "kg";
    case Measure::Metres:
      return "m";
    case Measure::Kilocalories:
      return "kcal";
  }
  return "";
}

std::string_view name_of(Limiter limiter) {
  switch (limiter) {
    case Limiter::Push:
      return "push";
    case Limiter::Pull:
      return "pull";
    case Limiter::Legs:
      return "legs";
    case Limiter::Core:
      return "core";
    case Limiter::Grip:
      return "grip";
    case Limiter::Pace:
      return "pace";
    case Limiter::Engine:
      return "engine";
    case Limiter::Queue:
      return "queue";
    case Limiter::Clock:
      return "clock";
  }
  return "";
}

std::string_view name_of(FindingKind kind) {
  switch (kind) {
    case FindingKind::Queue:
      return "queue";
    case FindingKind::NobodyFinishes:
      return "nobody-finishes";
    case FindingKind::NoFullRound:
      return "no-full-round";
    case FindingKind::OverCap:
      return "over-cap";
    case FindingKind::OverClass:
      return "over-class";
    case FindingKind::LastRunnerLate:
      return "last-runner-late";
    case FindingKind::LimitSwapped:
      return "limit-swapped";
    case FindingKind::KitShort:
      return "kit-short";
    case FindingKind::RouteClosed:
      return "route-closed";
    case FindingKind::HallTooFull:
      return "hall-too-full";
    case FindingKind::MuchMoreThanLately:
      return "much-more-than-lately";
    case FindingKind::FreeText:
      return "free-text";
    case FindingKind::MissesIntent:
      return "misses-intent";
    case FindingKind::UnevenHeats:
      return "uneven-heats";
    case FindingKind::TooFewForATeam:
      return "too-few-for-a-team";
  }
  return "";
}

std::string_view name_of(FindingSeverity severity) {
  switch (severity) {
    case FindingSeverity::Note:
      return "note";
    case FindingSeverity::Warning:
      return "warning";
    case FindingSeverity::Problem:
      return "problem";
  }
  return "";
}

std::span<const FindingKind> all_finding_kinds() {
  using enum FindingKind;
  static constexpr std::array kinds{Queue,        NobodyFinishes, NoFullRound,        OverCap,
                                    OverClass,    LastRunnerLate, LimitSwapped,       KitShort,
                                    RouteClosed,  HallTooFull,    MuchMoreThanLately, FreeText,
                                    MissesIntent, UnevenHeats,    TooFewForATeam};
  return kinds;
}

}  // namespace repwright::domain
