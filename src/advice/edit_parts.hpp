#pragma once

#include <string>
#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/repair.hpp"

namespace repwright::advice {

/// Where a list of lines stands: in a piece itself, in one of its parts, or in a slot of its clock.
struct Lines {
  domain::BlockId block;
  const std::vector<domain::Item>* items;
  bool slot = false;
};

/// All lists of a piece that somebody works through, in order; the piece must outlive them.
std::vector<Lines> lines_of(const domain::Block& piece);

/// Whether a block's rounds can be made fewer or more: not where its lines have an amount for each of them.
bool has_like_rounds(const domain::Block& block);

/// The plain count of a line; null where it has another kind of amount.
const double* plain_amount(const domain::Item& item);

/// The movement of a line; null where the catalogue does not know it.
const domain::Movement* movement_of(const domain::Item& item, const domain::Catalogue& catalogue);

/// How big an edit is beside an odd start (1), and what to tell the class.
struct Told {
  double size = 1;
  std::string words;
};

/// An edit of `board` that has still to be done to its copy.
domain::Edit edit_of(const domain::Board& board, domain::RepairKind kind, domain::BlockId piece,
                     std::vector<domain::StepId> steps, Told told);

/// `12`; fractions are dropped.
std::string whole_number(double amount);

}  // namespace repwright::advice
