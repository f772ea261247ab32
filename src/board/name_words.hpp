#pragma once

#include <cstdint>
#include <string_view>

/// Words that stand around the names of movements.
namespace repwright::board {

/// What the line says of the kit that a movement is done with.
enum class Kit : std::uint8_t { Unsaid, Barbell, Dumbbell, Kettlebell };

/// The kit that a word names.
Kit kit_of(std::string_view word);

/// Before or behind a name it leaves the movement what it is: 'heavy', 'alternating'.
bool is_modifier(std::string_view word);
/// The whole of a shortened word: `pwr` is power; empty if it is none.
std::string_view in_full(std::string_view word);
/// Whether a dot may stand behind it: `alt.`, `sq.`.
bool is_shortened(std::string_view word);
/// One in each hand.
bool is_double(std::string_view word);
/// Ends a name: 'each', 'for', 'rest'.
bool parts_names(std::string_view word);
/// How fast, behind a run or a machine: for the rule of paces.
bool is_pace_word(std::string_view word);
/// Of the floor, one letter from a movement's name and never a slip of the pen.
bool is_plain_word(std::string_view word);

}  // namespace repwright::board
