#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "domain/ids.hpp"
#include "domain/rehearsal.hpp"

/// Why a person is forecast what they are, and what would tell more of them: plain numbers.
namespace repwright::domain {

/// What holds a person back on one line of the board, from where its seconds go over all rounds.
struct WhyStep {
  int line = 0;         // of the text
  std::string version;  // the movement as a coach says it
  Limiter limiter = Limiter::Pace;
  double work_s = 0, rest_s = 0, wait_s = 0;  // means over the runs, all rounds together
  bool operator==(const WhyStep&) const = default;
};

/// One piece, forecast three times: as somebody like them, by their marks, and with their scores.
struct WhyPiece {
  std::string name;
  PieceOutcome now;  // without its steps
  Spread like_them, by_marks;
  /// How much of the doubt about somebody like them is left, 0 to 1: the weight of the prior in a normal
  /// posterior (A. Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., section 2.5, from memory).
  double prior_weight = 1;
  std::vector<WhyStep> steps;
  bool operator==(const WhyPiece&) const = default;
};

/// The scores of one session and by how much they moved the forecast of the first piece: a share of it.
struct MovingScore {
  std::chrono::year_month_day date{};
  std::string board;                // its id
  std::vector<std::string> scores;  // as entered
  double moved = 0;
  bool operator==(const MovingScore&) const = default;
};

struct Why {
  PersonId person;
  std::string name;
  std::vector<std::string> marks;  // as in the people file: "max push-up 18"
  int scores = 0;                  // that taught
  std::vector<WhyPiece> pieces;
  std::vector<MovingScore> moved_most;  // three at most, the strongest first
  bool operator==(const Why&) const = default;
};

/// A test that would tell of a person.
struct TestOffer {
  std::string test;  // as a column of the people file is headed: "max push-up"
  double minutes = 0;
  double narrower = 0;      // by so much of its width the range is expected to shrink, 0 to 1
  double p10 = 0, p90 = 0;  // the range that is expected, around the same middle
  bool operator==(const TestOffer&) const = default;
};

struct TestOffers {
  PersonId person;
  std::string name;
  std::string piece_name;        // of the piece with the widest range
  PieceOutcome piece;            // without its steps
  double day_share = 0;          // of the range's variance, 0 to 1: what no test takes away
  std::vector<TestOffer> tests;  // three at most, the one that tells most first
  bool operator==(const TestOffers&) const = default;
};

}  // namespace repwright::domain
