#pragma once

#include <memory>
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

/// Reads a board as chalked. Beside the forms of the trade (docs/guide/board.md) it reads a plain form for
/// every field, on which `tidy` relies: `title: words` on the first line; a blank line before each piece;
/// movement ids as names; unknown work in "double quotes"; notes of a line in [square brackets], of a piece
/// in a line of brackets or `note: words` below it; `note 5': words` as a part of the class; parts of a piece
/// under `once:`, `4 rounds:`, `rounds:` and `any order:`; `levels A / B`; `relay, teams of 3, 4 turns each`;
/// `each break: ...`, `once out: ...`, `carry over`; `score: total m` and the other names of scores.
/// Any bytes give a reading: what cannot be understood is kept as words and named
/// in the diagnostics, what cannot be is an error where it stands.
Reading read(std::string_view text, const domain::Catalogue& catalogue, const domain::House& house);

class Names;

/// The same for many boards of one house, as while somebody types: the catalogue's names are put in order
/// once. The catalogue must outlive it.
class Reader {
 public:
  Reader(const domain::Catalogue& catalogue, domain::House house);
  ~Reader();
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;

  Reading read(std::string_view text) const;

 private:
  domain::House house_;
  std::unique_ptr<const Names> names_;
};

}  // namespace repwright::board
