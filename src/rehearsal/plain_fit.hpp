#pragma once

#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "body/body.hpp"
#include "body/constants.hpp"
#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/fitted.hpp"
#include "domain/hall.hpp"
#include "domain/house.hpp"
#include "domain/people.hpp"

namespace repwright::rehearsal {

/// AsWritten ignores limits and best sets: for checks against results of people whose limits nobody knows.
enum class FitRule : std::uint8_t { WithinLimits, AsWritten };

/// The movements that people have really done, as far as it is known.
using VersionsSaid = std::map<domain::PersonId, std::vector<domain::MovementId>>;

/// All that a plain fit looks at; what it points to must outlive the call.
struct PlainFitRequest {
  const domain::Board& board;
  const domain::Catalogue& catalogue;
  const domain::House& house;
  const std::vector<domain::Person>& people;
  const std::vector<body::Body>& bodies;  // each person's middle body, in the order of the people
  const body::Constants& constants;
  std::optional<std::chrono::year_month_day> date;
  FitRule rule = FitRule::WithinLimits;
  const domain::Hall* hall = nullptr;  // whose shelf has the loads that the board leaves open; null: any load
  std::vector<domain::EquipmentId> gone{};  // kinds of places of which there is none: see `kinds_gone`
  const VersionsSaid* said = nullptr;       // of a session that is over
};

/// One step list per person: as written if no limit that holds on that day forbids it and the best set is at
/// least one, or half of a round's for who has an easier version of their own; else the first that passes of
/// the person's standing version, the board's scale options, the movement's swap for the limit, its easier
/// versions (nearest first), any movement of a shared pattern; else a rest. What needs a kind of place that
/// is gone passes for nobody. Who has no rep of a movement is given, if there is one, a version whose best
/// set is five or more and twice the set. Nobody is given a movement that a limit of theirs forbids; what
/// somebody is said to have done goes before all of this.
/// docs/models/plain-fit.md has the rules for levels, tiers and loads.
domain::FittedBoard plain_fit(const PlainFitRequest& request);

}  // namespace repwright::rehearsal
