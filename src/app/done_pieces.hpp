#pragma once

#include <map>
#include <string>
#include <tuple>
#include <utility>

#include "body/knowledge.hpp"
#include "domain/board.hpp"
#include "domain/fitted.hpp"
#include "domain/ids.hpp"

/// The pieces that people have scored, and what these scores taught of them.
namespace repwright::app {

/// What somebody scored: the board, its piece, the versions done.
using PieceKey = std::tuple<std::string, int, std::string>;

/// The versions that a person did, in the order of the board, each once, as a score names them.
std::string versions_done(const domain::FittedPerson& fitted);

/// The same for two pieces of the same work, wherever they stand and whatever they are called.
domain::Block work_of(domain::Block piece);

/// One person's levels, and which piece each is of.
struct DonePieces {
  body::PieceLevels levels;
  std::map<PieceKey, std::size_t> at;
};

/// What a gym has scored.
struct DoneBefore {
  std::map<std::pair<std::string, int>, domain::Block> works;  // as `work_of`, by board and piece
  std::map<domain::PersonId, DonePieces> people;
};

}  // namespace repwright::app
