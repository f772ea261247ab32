#pragma once

#include <string_view>
#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/diagnostic.hpp"
#include "domain/house.hpp"

namespace repwright::board {

/// What a text says: the board, where each step and block of it stands, and what was doubtful.
struct Reading {
  domain::Board board;
  std::vector<domain::Span> steps;   // by StepId.index
  std::vector<domain::Span> blocks;  // by BlockId.index
  std::vector<domain::Span>
      rules;  // what is no step but was read: titles, headings, clocks, conditions, words
  std::vector<domain::Diagnostic> diagnostics;
};

/// Reads a board as chalked. Any bytes give a reading: what cannot be understood is kept as words and named
/// in the diagnostics, what cannot be is an error where it stands.
Reading read(std::string_view text, const domain::Catalogue& catalogue, const domain::House& house);

}  // namespace repwright::board
