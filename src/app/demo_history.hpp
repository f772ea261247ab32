#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/rehearse_class.hpp"
#include "base/random.hpp"
#include "base/result.hpp"
#include "domain/people.hpp"
#include "domain/score.hpp"

/// The invented past of the demo gym: sessions played by hidden bodies.
namespace repwright::app {

struct PastSession {
  std::chrono::year_month_day date{};
  std::string class_id, board_id;
  std::string board_text;
};
struct PastFlag {
  std::chrono::year_month_day date{};
  domain::PersonId person;
  domain::DayFlag flag = domain::DayFlag::None;
};
/// Which sessions there were, who tends to come, and which days were not a person's own.
struct DemoPast {
  base::Seed seed{1};
  std::vector<PastSession> sessions;
  std::map<domain::PersonId, double> show_rate;  // of the days that a person attends
  std::map<domain::PersonId, std::chrono::year_month_day> joined;
  std::vector<PastFlag> flagged;
};

struct DemoHistory {
  std::vector<domain::ScoreEntry> scores;  // by date, then in the order of the people
  std::vector<body::Body> hidden;  // the true bodies, in the order of the people; never in the gym folder
};

/// Draws one true body per person at the past's seed, plays every session with whoever comes, and writes down
/// what a coach would: score, version, effort, flag. Same past, same history. Fails where a session's board
/// has no work.
base::Result<DemoHistory> demo_history(const DemoPast& past, const GymKnowledge& gym,
                                       const std::vector<domain::Person>& people);

}  // namespace repwright::app
