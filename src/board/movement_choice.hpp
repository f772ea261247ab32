#pragma once

#include "board/session.hpp"

/// Which movement a name means here.
namespace repwright::board {

/// The movement of a name: kit, unit and load of the line decide, then the likeliest. Remarks what was
/// guessed.
domain::MovementId choose_movement(Session&, const Named&, const Entry&, const domain::Span&);

/// An option in brackets: first among the easier and harder versions of `base`, then any name. Nothing if
/// the words are no movement.
std::optional<domain::MovementId> option_of(Session&, Cursor words,
                                            const std::optional<domain::MovementId>& base);

/// Remarks that the words name no known movement, the nearest names as repairs.
void remark_unknown(Session&, const domain::Span&, const std::string& words);

}  // namespace repwright::board
