#pragma once

#include <string>
#include <vector>

#include "app/done_pieces.hpp"
#include "app/past_session.hpp"

/// Which score of the sheet belongs to which forecast.
namespace repwright::app {

/// Lines of the score sheet, in its order.
using Entries = std::vector<const domain::ScoreEntry*>;

/// An entry that there is a forecast for, and how it is counted.
struct MatchedScore {
  const domain::ScoreEntry* entry;
  const domain::PieceOutcome* piece;
  double value = 0;     // in the measure of the piece
  bool beyond = false;  // the clock stopped it: at or beyond `value`
  bool teaches = true;
  PieceKey key;
};

struct Matches {
  std::vector<MatchedScore> scores;
  std::vector<std::string> notes;  // what was left out or does not teach, and why
};

/// The entries of one person of the rehearsal, each piece once. Another version than the one rehearsed and
/// days marked ill, hot or easy do not teach.
Matches match_scores(const Entries& entries, const ClassRehearsal& played, std::size_t person);

/// The movements that the score sheet names as done; nothing where it names none that the catalogue knows.
rehearsal::VersionsSaid versions_said(const Entries& entries, const domain::Catalogue& catalogue);

}  // namespace repwright::app
