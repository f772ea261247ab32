#pragma once

#include "board/session.hpp"

/// The details of one line of work, one function per form. Each returns whether it took something.
namespace repwright::board {

/// The movement of the entry; null if no catalogue has it.
const domain::Movement* movement_of(const Session& session, const Entry& entry);
/// Keeps the words beside the work, behind what is kept already.
void add_note(Entry& entry, const std::string& words);

// How heavy.
bool read_height(Session&, Cursor&, Entry&);
bool read_at(Session&, Cursor&, Entry&);
bool read_load_step(Session&, Cursor&, Entry&);
bool read_share_of_best(Session&, Cursor&, Entry&);
bool read_pair_of_bells(Session&, Cursor&, Entry&);
bool read_load(Session&, Cursor&, Entry&);
/// `24/16`, `16`, `60/40 kg`, `1.5/1 pood`, `10 or 6 kg`; empty if no number stands here.
std::vector<double> take_load_numbers(Cursor& cursor, LoadUnit& unit);

// How it is done.
bool read_sides(Session&, Cursor&, Entry&);
bool read_effort(Session&, Cursor&, Entry&);
bool read_tempo(Session&, Cursor&, Entry&);
bool read_share(Session&, Cursor&, Entry&);
/// `behind_at`: an @ or a word for it has announced a pace.
enum class Announced : std::uint8_t { No, Yes };
bool read_pace(Session&, Cursor&, Entry&, Announced);
/// Whether a pace can be said of the entry: a run or a machine.
bool paced(const Session& session, const Entry& entry);

}  // namespace repwright::board
