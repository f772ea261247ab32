#pragma once

#include <string>

#include "domain/rehearsal.hpp"

namespace repwright::sheets {

/// A score of that piece as it is written: `12:05`, `7+12`, `61.5 kg`.
std::string score_text(const domain::PieceOutcome& piece, double value);

/// One piece, a line for each person: score and range, back from the run, wait, what holds them. A piece that
/// is the same for everybody is one line, loads that are chosen and not forecast are listed by load. UTF-8,
/// ends with a line feed; empty if nobody does the piece.
std::string scores_text(const domain::Rehearsal& rehearsal, int piece);

}  // namespace repwright::sheets
