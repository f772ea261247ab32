#pragma once

#include <optional>
#include <vector>

#include "rehearsal/script_draft.hpp"

/// From one block to one person's ops, a function per form of the trade.
namespace repwright::rehearsal {

/// Where a person stands among the others of the heat and of the team.
struct Seat {
  int in_heat = 0;  // in order of arrival
  int member = 0;   // of the team
  int team_size = 1;
};

/// For time, AMRAP, ladder, chipper, buy-in and cash-out, free partition, for distance, max effort.
void write_rounds(ScriptDraft& draft, const Seat& seat);
/// Every minute (or two, or three): slots by the clock.
void write_every(ScriptDraft& draft, const Seat& seat);
/// Work and rest, by the clock or on a private one.
void write_intervals(ScriptDraft& draft);
/// Stations: each begins at another one and moves on.
void write_circuit(ScriptDraft& draft, const Seat& seat);
/// Sets and supersets.
void write_sets(ScriptDraft& draft);
/// Building up to a heavy set.
void write_build(ScriptDraft& draft);
/// So much of a hold, at a price for each break.
void write_accumulate(ScriptDraft& draft);
/// Pairs and teams: shared pools, together, each, or in turns. Adds the pools to `team` (once per team).
void write_partner(ScriptDraft& draft, const Seat& seat, Team& team);
/// Turns with a tag.
void write_relay(ScriptDraft& draft);

/// When the piece ends for everybody, if its clock says so, s.
std::optional<double> piece_end(const timetable::Piece& piece);

/// The lines of a round in the order of this seat: every second person begins at the odd-start movement.
std::vector<domain::Item> round_order(const std::vector<domain::Item>& items,
                                      const std::optional<domain::MovementId>& odd_start, const Seat& seat);

/// Whether the ops from there on take any time: if not, nobody does them over and over.
bool takes_time(const ScriptDraft& draft, int from);

/// Counts of a list of items: the longest per-round list, 1 if there is none.
int listed_rounds(const std::vector<domain::Item>& items);

}  // namespace repwright::rehearsal
