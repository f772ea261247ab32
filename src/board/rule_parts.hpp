#pragma once

#include "board/session.hpp"

/// What several rules of counts and clocks share.
namespace repwright::board {

/// `rounds`, `rds` and the like.
bool take_rounds_word(Cursor& cursor);

/// Whether `for distance` stands near ahead on the line.
bool for_distance_follows(Cursor cursor);

/// Remarks rounds below one and above what a session holds.
void check_rounds(Session& session, double count, const domain::Span& span);

/// `10 to 1`, `1-10 ladder`: every count from one to the other, one apart. Nothing if it is too far.
std::optional<Numbers> take_run_of_counts(Cursor& cursor);

/// Whether a letter stands here for the partner whose turn to be named it is: `A: 30 cal bike`.
bool at_letter_of_partner(Session& session, const Cursor& cursor);

/// Whether the piece ends with this line.
bool nothing_below(const Session& session);

/// The part of the piece that the next work belongs to; a part without work is taken over.
Section& open_section(Session& session, Draft& draft, Role role, std::optional<int> rounds);

}  // namespace repwright::board
