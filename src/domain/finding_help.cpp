#include "domain/finding_help.hpp"

namespace repwright::domain {

std::string_view help_with(FindingKind kind) {
  using enum FindingKind;
  switch (kind) {
    case Queue:
      return "`odd start with ...`, `heats 2`, `start every 15 s`, or a `2nd station: ...`";
    case NobodyFinishes:
    case OverCap:
      return "fewer rounds or reps, or a longer cap";
    case NoFullRound:
      return "fewer reps in the round, or an easier version for them";
    case OverClass:
      return "take minutes from the longest part, or rounds from the last piece";
    case LastRunnerLate:
      return "a shorter leg for them, or let them leave first";
    case KitShort:
      return "share, go in heats, or take the next size down";
    case RouteClosed:
      return "another distance, or an ergometer";
    case HallTooFull:
      return "`heats 2`, or part of the class outside";
    case FreeText:
      return "the catalogue's name for it, or a word of the house";
    case MissesIntent:
      return "a fit for each of them, or another intent";
    case TooFewForATeam:
      return "work with them, or say on the board what one does alone";
    case UnevenHeats:
    case LimitSwapped:
    case MuchMoreThanLately:
      return "";
  }
  return "";
}

}  // namespace repwright::domain
