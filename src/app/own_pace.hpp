#pragma once

#include <array>
#include <map>
#include <utility>
#include <vector>

#include "body/effort.hpp"
#include "body/level_gap.hpp"
#include "domain/ids.hpp"

/// How somebody's own level in a piece shows on the floor: docs/decisions/learning.md.
namespace repwright::app {

struct ClassRequest;
struct Gathered;

/// How much longer than their body tells each line takes a person in a piece, so that they score what they
/// score beyond what the model tells of their body.
class OwnPace {
 public:
  static constexpr std::size_t point_count = 5;
  /// Logarithms of the stretches that scores are known for.
  static constexpr std::array<double, point_count> stretches{-.6, -.3, 0, .3, .6};

  /// `scores` are the logarithms of what a lone person scores at each of `stretches`, `reps` the ways of
  /// working that the piece counts reps of.
  OwnPace(body::LevelGap gap, const std::array<double, point_count>& scores,
          std::vector<body::EffortSpec> reps)
      : gap_(gap), scores_(scores), reps_(std::move(reps)) {}

  /// Of one body: the normals behind it, and a standard normal of the piece's own. 1 where the score does
  /// not depend on how long the lines take.
  double stretch(const body::Normals& normals, double own) const;

  /// Whether this body could have done the piece at all.
  bool possible_for(const body::Body& body, const body::Constants& constants) const;

 private:
  body::LevelGap gap_;
  std::array<double, point_count> scores_;
  std::vector<body::EffortSpec> reps_;
};

/// Of everybody who has done a piece of the request's board before, on whatever board of the gym it stood.
/// Pieces for teams are left as they are: what a team scores is nobody's own.
using OwnPaces = std::map<domain::PersonId, std::map<domain::BlockId, OwnPace>>;
OwnPaces own_paces(const ClassRequest& request, const Gathered& gathered);

}  // namespace repwright::app
