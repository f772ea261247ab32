#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "domain/board.hpp"
#include "domain/gym_class.hpp"

/// When things happen in a class: the one meaning of 'when', for rehearsal and clock alike.
namespace repwright::timetable {

enum class BoxKind : std::uint8_t { Briefing, WarmUp, Work, Rest, Change, Scores, CoolDown, Clean, Note };

/// One stretch of the class, in order; boxes touch. `planned` is empty where the people decide: the box lasts
/// as long as its piece. `starts_at` is set only where the board names a clock time (windows).
struct Box {
  BoxKind kind = BoxKind::Work;
  std::string name;
  std::optional<base::Duration> planned;
  std::optional<base::Duration> starts_at;
  std::optional<int> piece;  // index into Timetable::pieces
  domain::BlockId block;     // invalid (index -1) for boxes that the board text does not name
  bool operator==(const Box&) const = default;
};

enum class PhaseKind : std::uint8_t { Work, Rest };
/// A stretch between two clock edges of one piece, from its start signal. `round` and `slot` count from 0.
struct Phase {
  PhaseKind kind = PhaseKind::Work;
  base::SimTime start;
  base::SimTime end;
  int round = 0;
  int slot = 0;
  bool operator==(const Phase&) const = default;
};

/// Up: counts up until all are home or the cap. Down: one fixed length. Edges: work and rest by the clock.
/// Own: private clocks (sets and rests that each person takes).
enum class ClockKind : std::uint8_t { Up, Down, Edges, Own };

/// Between two heats: to clear the floor and line up again (60 to 90 s: common practice, no source).
inline constexpr base::Duration heat_change = base::Duration::from_si(75);

/// One scored or timed part with a clock of its own.
struct Piece {
  domain::BlockId block;
  std::string name;
  ClockKind clock = ClockKind::Up;
  std::optional<base::Duration> cap;
  std::optional<base::Duration> length;  // fixed length of one heat
  std::vector<Phase> phases;             // of one heat; empty unless Edges
  int heats = 1;                         // `heat_change` apart
  std::optional<domain::Stagger> stagger;
  bool operator==(const Piece&) const = default;
};

struct Timetable {
  std::vector<Box> boxes;
  std::vector<Piece> pieces;
  std::optional<base::Duration> class_length;
  bool operator==(const Timetable&) const = default;
};

/// What a house decides about the clock.
struct LayoutRules {
  bool last_rest_counts = true;  // in timed intervals and circuits; a rest 'between' never follows the last
};

/// The timetable of a board in a class: every piece with its clock, every box of the hour in order, those
/// that the text does not name (briefing, change, scores, cleaning) taken from the class. Optional blocks are
/// left out. Open children of a window or of a heading with minutes share what its timed children leave.
Timetable lay_out(const domain::Board& board, const domain::GymClass& gym_class,
                  const LayoutRules& rules = {});

}  // namespace repwright::timetable
