#pragma once

#include "board/session.hpp"

/// How much of a line of work, before its name and behind it.
namespace repwright::board {

/// Work in a list without amounts stands for itself where the piece gives the amount.
bool amount_comes_from_piece(Session& session);
/// `swings 24/16` within a time, where much of it is done anyway: two loads.
bool reads_as_loads(Session& session, const Entry& entry, const Numbers& amount);

/// What stands before the name: sets, amount, sides, the unit of an ergometer.
void take_amount_before(Session& session, Cursor& cursor, Entry& entry);
/// What stands behind it, where nothing stood before.
void take_amount_behind(Session& session, Cursor& cursor, Entry& entry);
/// `max row cals`: the unit behind the name.
void take_unit_behind(Cursor& cursor, Entry& entry);
/// A second amount with a unit for the same work cannot be.
void refuse_second_amount(Session& session, Cursor& cursor, const Entry& entry);

}  // namespace repwright::board
