#pragma once

#include <vector>

#include "app/rehearse_class.hpp"
#include "base/result.hpp"
#include "domain/demo_past.hpp"
#include "domain/people.hpp"
#include "domain/score.hpp"

/// The invented past of the demo gym: sessions played by hidden bodies.
namespace repwright::app {

struct DemoHistory {
  std::vector<domain::ScoreEntry> scores;  // by date, then in the order of the people
  std::vector<body::Body> hidden;  // the true bodies, in the order of the people; never in the gym folder
};

/// Draws one true body per person at the past's seed, plays every session with whoever comes, and writes down
/// what a coach would: score, version, effort, flag. Same past, same history. Fails where a session's board
/// has no work.
base::Result<DemoHistory> demo_history(const domain::DemoPast& past, const GymKnowledge& gym,
                                       const std::vector<domain::Person>& people);

}  // namespace repwright::app
