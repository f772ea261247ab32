#pragma once

#include "board/session.hpp"

/// Which movement a name means here.
namespace repwright::board {

/// The movement of a name: kit, unit and load of the line decide, then the likeliest. Remarks what was
/// guessed.
domain::MovementId choose_movement(Session&, const Named&, const Entry&, const domain::Span&);

/// The lift that a bare name stands for where it is lifted: a squat in sets is one with the bar.
std::optional<domain::MovementId> lift_of(const Session&, const Named&);

/// What is said around a name that a lift may be meant by.
struct LiftedIn {
  bool sets_alone = false;  // the only work of its sets, in no warm-up
  bool build = false;
};
/// Takes the lift for the name: in sets of few, by percentage, effort or load, or built up to. Says so.
void settle_lift(Session&, Entry&, LiftedIn);

/// An option in brackets: first among the easier and harder versions of `base`, then any name. Nothing if
/// the words are no movement.
std::optional<domain::MovementId> option_of(Session&, Cursor words,
                                            const std::optional<domain::MovementId>& base,
                                            std::optional<domain::Unit> unit = {});

/// In what the line counts, as far as it is said.
std::optional<domain::Unit> unit_of(const Entry&);

/// Remarks that the words name no known movement, the nearest names as repairs; those that are counted in
/// that unit, where one is said.
void remark_unknown(Session&, const domain::Span&, const std::string& words,
                    std::optional<domain::Unit> unit);

}  // namespace repwright::board
