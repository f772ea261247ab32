#pragma once

#include <functional>
#include <string>
#include <vector>

#include "advice/fits.hpp"
#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/fitted.hpp"

/// A fit in a coach's words.
namespace repwright::app {

/// Every line of the piece, in its slots and children too.
void for_each_line(const domain::Block& piece, const std::function<void(const domain::Item&)>& one);

struct FitWordsOf {
  const domain::Block& piece;
  const domain::FittedPerson& plain;  // what the person would do without advice
  const domain::Catalogue& catalogue;
};

/// What the person does otherwise than the board says, line by line: `9 ring rows for 12 pull-ups`.
std::vector<std::string> fit_words(const FitWordsOf& of, const domain::FittedPerson& own);

/// What `other` does otherwise than `own`; empty if nothing.
std::string difference_words(const FitWordsOf& of, const domain::FittedPerson& own,
                             const domain::FittedPerson& other);

/// Which wish is out of reach for the person, the nearest that comes of it, and how much of it is a queue.
std::string clash_words(const FitWordsOf& of, const advice::ChosenFit& fit, const domain::FitWindow& window);

}  // namespace repwright::app
