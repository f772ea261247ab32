#pragma once

#include <chrono>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <stop_token>
#include <string>
#include <vector>

#include "app/done_pieces.hpp"
#include "app/open_gym.hpp"
#include "base/result.hpp"
#include "body/knowledge.hpp"

/// What a gym's scores teach of its people: docs/decisions/learning.md.
namespace repwright::app {

/// One score beside what was forecast for it from what was known the day before.
struct ForecastScore {
  domain::ScoreEntry entry;
  domain::Measure measure = domain::Measure::Seconds;
  double value = 0;                  // the score in `measure`
  double p10 = 0, p50 = 0, p90 = 0;  // of the forecast
  double below = 0;                  // the share of the forecast below the score
  int nth = 1;                       // so many scores of this person had been seen, this one included
  double weight = 0;                 // how much it counted: 0 to 1; 0 where it taught nothing
  std::optional<double> last;        // that person's score before in the same piece
  std::optional<double> group;       // what everybody had scored in it before, in the middle
};

/// What the scores of one session made of a person.
struct TaughtBy {
  std::chrono::year_month_day date{};
  std::string board;                // its id
  std::vector<std::string> scores;  // as entered
  body::Normals moved{};            // the middle of the parameters
};

struct LearnedPerson {
  domain::PersonId person;
  body::BodyEstimate by_marks, now;  // from marks alone; with all scores
  int scores = 0;                    // that taught
  std::chrono::sys_days until{};     // the day of the last one
  std::vector<TaughtBy> taught_by;   // by date
  DonePieces done{};
};

struct GymLearning {
  std::vector<LearnedPerson> people;                           // in the order of the gym's people
  std::vector<ForecastScore> forecasts;                        // by date
  std::vector<std::string> notes;                              // scores that were left out, and why
  std::map<std::pair<std::string, int>, domain::Block> works;  // of `DoneBefore`
};

struct LearnRequest {
  int runs = 100;  // of each session; as many drawn bodies of each person
  std::uint64_t seed = 1;
  int threads = 0;                               // 0: as many as the machine has
  std::optional<std::chrono::sys_days> today{};  // scores after it are left out
  std::set<domain::PersonId> of{};               // whose scores are looked at; empty: everybody's
  std::stop_token stop{};
  std::function<void(int done, int of)> progress{};  // sessions
};

/// Goes through the gym's sessions by date: rehearses each with those who scored in it and the bodies known
/// by then, and lets every score teach. Left out, with a note: days marked ill, hot or easy (forecast, but
/// they do not teach), scores of boards or pieces that the gym does not have, a second score of the same
/// piece and day, another version than the one forecast, a day that has not come. Same gym, same answer.
/// Fails with Stopped.
base::Result<GymLearning> learn_gym(const OpenGym& gym, const LearnRequest& request);

}  // namespace repwright::app
