#pragma once

#include <string>

#include "domain/rehearsal.hpp"

namespace repwright::sheets {

/// One piece, a line for each person: score and range, back from the run, wait, what holds them. A piece that
/// is the same for everybody is one line, loads that are chosen and not forecast are listed by load. UTF-8,
/// ends with a line feed; empty if nobody does the piece.
std::string scores_text(const domain::Rehearsal& rehearsal, int piece);

}  // namespace repwright::sheets
