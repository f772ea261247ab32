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

/// Whether the piece ends with this line.
bool nothing_below(const Session& session);

/// The part of the piece that the next work belongs to; a part without work is taken over.
Section& open_section(Session& session, Draft& draft, Role role, std::optional<int> rounds);

}  // namespace repwright::board
