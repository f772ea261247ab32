#pragma once

#include "body/knowledge.hpp"

/// What somebody scores in a piece beyond what the model tells of their body.
namespace repwright::body {

/// A natural logarithm: normal, going along with the normals behind the body of the same day.
struct LevelGap {
  double middle = 0;
  Normals along{};
  double own_sd = 0;  // what does not go along with the body

  /// That of one body; `own` is a standard normal.
  double at(const Normals& normals, double own) const;
};

/// The gap in one of the pieces that this body has done.
LevelGap gap_of(const BodyEstimate& body, const PieceLevels& levels, std::size_t level);

}  // namespace repwright::body
