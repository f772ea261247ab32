#pragma once

#include <array>
#include <string_view>

#include "domain/diagnostic.hpp"

/// Every remark that reading a board can make, in one list.
namespace repwright::board {

struct DiagnosticName {
  std::string_view name;
  domain::Severity severity;
  std::string_view about;
};

inline constexpr std::array all_diagnostic_names{
    // Read, with the guess that was taken.
    DiagnosticName{"spelling-guess", domain::Severity::Note, "a slip of the pen was read as a known word"},
    DiagnosticName{"ambiguous-movement", domain::Severity::Note, "a word that may mean several movements"},
    DiagnosticName{"tier-order", domain::Severity::Note, "two loads or amounts follow the house rule"},
    DiagnosticName{"tempo-order", domain::Severity::Note, "four tempo digits follow the house order"},
    DiagnosticName{"mass-unit", domain::Severity::Note, "a load without a unit takes the house unit"},
    DiagnosticName{"both-sides", domain::Severity::Note, "an amount each side was counted for both sides"},
    DiagnosticName{"pull-up-swing", domain::Severity::Note,
                   "a plain pull-up follows the house rule on swinging"},
    DiagnosticName{"minutes-or-metres", domain::Severity::Note, "an m that may be minutes or metres"},
    DiagnosticName{"load-or-effort", domain::Severity::Note,
                   "a small number after @ may be a load or an effort"},
    DiagnosticName{"slots-or-together", domain::Severity::Note,
                   "lines without labels under an every-minute clock"},
    DiagnosticName{"heats-of", domain::Severity::Note, "heats of so many may be heats or people"},
    DiagnosticName{"work-of-next", domain::Severity::Note, "clocks in a row stand over the same work"},
    DiagnosticName{"one-each", domain::Severity::Note, "work without an amount was counted as one"},
    DiagnosticName{"kept-as-words", domain::Severity::Note, "words that are neither work nor rule were kept"},
    DiagnosticName{"rule-of-another-kind", domain::Severity::Note, "a rule that such a piece does not have"},
    DiagnosticName{"first-of-two", domain::Severity::Note,
                   "two values where one is needed: the first counts"},
    DiagnosticName{"level-ignored", domain::Severity::Note,
                   "a rule names a level that the piece does not have"},
    // Read, but something is missing or unlikely.
    DiagnosticName{"unknown-movement", domain::Severity::Warning,
                   "a movement that the catalogue does not know"},
    DiagnosticName{"slash-without-levels", domain::Severity::Warning,
                   "a tuple that no level header explains"},
    DiagnosticName{"no-length", domain::Severity::Warning, "a clock that does not say how long it runs"},
    DiagnosticName{"numbers-without-movement", domain::Severity::Warning, "amounts that name no movement"},
    DiagnosticName{"unit-of-movement", domain::Severity::Warning,
                   "a movement is not usually counted in that unit"},
    DiagnosticName{"nothing-to-repeat", domain::Severity::Warning, "'same' without a piece above"},
    DiagnosticName{"window-order", domain::Severity::Warning, "a window begins before the last one ends"},
    DiagnosticName{"second-clock", domain::Severity::Warning, "a second value for something already said"},
    // Impossible where it stands.
    DiagnosticName{"no-such-time", domain::Severity::Error, "seconds of sixty and more"},
    DiagnosticName{"cap-too-short", domain::Severity::Error,
                   "a cap shorter than the fixed part of the piece"},
    DiagnosticName{"too-many", domain::Severity::Error, "a count that no session holds"},
    DiagnosticName{"no-kilocalories", domain::Severity::Error, "kilocalories of a movement that shows none"},
    DiagnosticName{"no-work", domain::Severity::Error, "a piece without work"},
    DiagnosticName{"share-of-nothing", domain::Severity::Error, "a percentage of no lift"},
    DiagnosticName{"two-units", domain::Severity::Error, "two units for one amount"},
    DiagnosticName{"no-amount", domain::Severity::Error, "an amount of nothing or less"},
    DiagnosticName{"backwards", domain::Severity::Error, "a range whose end comes before its start"},
    DiagnosticName{"intent-backwards", domain::Severity::Warning,
                   "an intended range whose end comes before its start, read the other way round"},
    DiagnosticName{"unclosed-bracket", domain::Severity::Note, "a bracket that is not closed on its line"},
    DiagnosticName{"too-deep", domain::Severity::Warning, "brackets in brackets in brackets"},
    DiagnosticName{"too-heavy", domain::Severity::Error, "a load that nobody lifts"},
};

/// How severe the remark of that name is.
constexpr domain::Severity severity_of(std::string_view name) {
  for (const DiagnosticName& known : all_diagnostic_names)
    if (known.name == name) return known.severity;
  return domain::Severity::Warning;
}

}  // namespace repwright::board
