#pragma once

#include <map>
#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/proposals.hpp"

/// The ways in which one person may do a piece otherwise than the board says.
namespace repwright::advice {

/// What is changed: other movements and loads by line, all counts, all distances and the rounds times a
/// number. Nothing changed is the board itself.
struct FitChange {
  std::map<domain::StepId, domain::MovementId> versions;
  std::map<domain::StepId, base::Mass> loads;
  double counts = 1;
  double metres = 1;
  double rounds = 1;
  bool operator==(const FitChange&) const = default;
};

/// How much there is to explain and to give up; 0 for no change.
double size_of(const FitChange& change);

/// All changes of one thing: a line two steps easier or one harder, a load of the shelf next to the written
/// one, counts from a half to a third more, distances from a half, a round or two less or one more. The first
/// is no change.
std::vector<FitChange> single_changes(const domain::Block& piece, const domain::Premises& premises);

/// What is one change away from a person's own: one thing of it made otherwise, added or taken back.
std::vector<FitChange> changes_beside(const FitChange& own, const std::vector<FitChange>& singles);

/// Every two of these that change different things.
std::vector<FitChange> double_changes(const std::vector<FitChange>& singles);

/// The piece with the change; counts and rounds whole, distances in steps of fifty metres (from a hundred
/// up).
domain::Block changed(domain::Block piece, const FitChange& change, const domain::Catalogue& catalogue);

}  // namespace repwright::advice
