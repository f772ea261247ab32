#pragma once

#include <chrono>
#include <map>
#include <string>
#include <vector>

#include "base/random.hpp"
#include "domain/ids.hpp"
#include "domain/score.hpp"

/// The plan of an invented past, from which the demo's history is played.
namespace repwright::domain {

struct PastSession {
  std::chrono::year_month_day date{};
  std::string class_id, board_id;
  std::string board_text;
};
struct PastFlag {
  std::chrono::year_month_day date{};
  PersonId person;
  DayFlag flag = DayFlag::None;
};
/// Which sessions there were, who tends to come, and which days were not a person's own.
struct DemoPast {
  base::Seed seed{1};
  std::vector<PastSession> sessions;
  std::map<PersonId, double> show_rate;  // of the days that a person attends
  std::map<PersonId, std::chrono::year_month_day> joined;
  std::vector<PastFlag> flagged;
};

}  // namespace repwright::domain
