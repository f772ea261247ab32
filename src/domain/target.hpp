#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/rehearsal.hpp"

/// What to write beside a piece: by when to stop, and what who may aim at.
namespace repwright::domain {

/// A cap by which most are home. `home` is the share of people and runs by then, `home_now` by the cap that
/// the board has.
struct CapTarget {
  double seconds = 0;
  double home = 0;
  std::optional<double> now_s = {};
  double home_now = 1;
  std::string text = {};  // the whole board text with it; empty: it is there, or cannot be written
  bool operator==(const CapTarget&) const = default;
};

/// The middle half of what some people make of a piece, in its measure, or in rounds.
struct LevelTarget {
  std::string name;  // of the board's level, or which third of the class
  int people = 0;
  double from = 0;
  double to = 0;
  std::optional<double> first_round_s = {};  // when the middle one of them has it; empty: there is but one
  bool operator==(const LevelTarget&) const = default;
};

struct PieceTarget {
  int piece = 0;
  std::string name = {};
  Measure measure = Measure::Seconds;
  bool in_rounds = false;
  std::optional<CapTarget> cap = {};
  std::vector<LevelTarget> levels = {};  // the quickest first
  bool operator==(const PieceTarget&) const = default;
};

}  // namespace repwright::domain
