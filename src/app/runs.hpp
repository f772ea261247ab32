#pragma once

#include <string>
#include <vector>

#include "domain/door.hpp"
#include "domain/rehearsal.hpp"

/// Who is out on the run, and when they should be back.
namespace repwright::app {

/// How long somebody's runs out of the door take, over all runs of the board.
struct RunLength {
  domain::PersonId person;
  double p10_s = 0;  // of the shortest run
  double p50_s = 0;
  double p90_s = 0;  // of the longest run
};

/// Of everybody who runs in the rehearsal; runs on the spot and machines are not among them.
std::vector<RunLength> run_lengths(const domain::Rehearsal& rehearsal);

/// Who is out and since when, in the order in which they left; each line is what somebody saw, and the last
/// one of a person holds.
struct StillOut {
  domain::PersonId person;
  std::chrono::sys_seconds since{};
};
struct OutAndIn {
  std::vector<StillOut> out;
  std::vector<domain::PersonId> back;  // in the order in which they came
};
OutAndIn out_and_in(const std::vector<domain::KeptDoorLine>& lines);

}  // namespace repwright::app
