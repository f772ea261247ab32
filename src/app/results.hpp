#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <stop_token>
#include <string>
#include <vector>

#include "app/gym_at_hand.hpp"
#include "base/result.hpp"
#include "domain/kept.hpp"
#include "domain/rehearsal.hpp"

/// What came of a class, for everybody to look at: each beside their own past.
namespace repwright::app {

/// How a score stands to the person's own earlier ones of the same piece in the same version.
enum class OwnBest : std::uint8_t {
  First,        // there is none
  Beyond,       // better than all of them by more than a day's luck
  WithinNoise,  // better, or not worse than by a day's luck
  Below,        // worse than that
  Unknown       // cannot be compared
};

struct ResultLine {
  domain::PersonId person;
  std::string name;
  std::string score;    // as entered
  std::string done_as;  // version
  std::string said_as;  // the same as people say it
  OwnBest own = OwnBest::Unknown;
  std::optional<double> value;  // in the piece's measure
  std::optional<double> best_before;
  double noise = 0;  // how much two days of one person may differ by luck
};

struct PieceResults {
  std::string piece;
  domain::Measure measure = domain::Measure::Reps;
  double reps_per_round = 0;
  std::vector<ResultLine> lines;  // own bests beyond luck first, the others by name
};

/// The newest line of each person and piece counts. `scores` is the sheet as it is kept. Fails as
/// `rehearse_what_if`.
base::Result<std::vector<PieceResults>> class_results(const GymAtHand& at_hand, const std::string& class_id,
                                                      const std::vector<domain::KeptScore>& scores,
                                                      const std::stop_token& stop);

/// The smallest difference of two scores of one person that is more than two days' luck in 95 of 100: 1.96
/// times the spread of a difference, 2.77 times that of a day (minimal detectable change; Weir 2005, J
/// Strength Cond Res 19:231-240, doi 10.1519/15184.1, from memory).
double noise_of(double sd_day);

}  // namespace repwright::app
