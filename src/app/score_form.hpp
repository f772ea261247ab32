#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/gym_at_hand.hpp"
#include "app/load_steps.hpp"
#include "base/result.hpp"
#include "domain/rehearsal.hpp"
#include "rehearsal/groups.hpp"

/// What is to be written down after a class: the form of the score of every piece, filled in as far as a
/// rehearsal can.
namespace repwright::app {

enum class ScoreForm : std::uint8_t { Time, Rounds, Reps, Load, Distance, Kcal };

struct FormPerson {
  domain::PersonId person;
  std::string name;
  std::vector<domain::FittedItem> lines;  // of this piece, in the order of the board
  std::string done_as;                    // the versions of this piece that they are planned to do
  std::string said_as;                    // the same as people say it
  std::vector<domain::PersonId> with;     // whose score is the same: the others of the pair or team
  domain::PieceOutcome forecast;          // without steps
  /// Where they stand; the place is that within the heat, from 0. `start` is after the heat's signal.
  rehearsal::Standing standing{};
  base::Duration start{};
  double least = 0, most = 0;     // what is believed without a question, in the forecast's measure
  std::optional<double> holds{};  // reps: more are not in the piece as they do it
  LoadSteps loads{};              // of loads: those that the hall has for it
};

struct FormPiece {
  int index = 0;      // of the class's timetable
  std::string piece;  // as a score names it; empty: the board has one
  std::string title;
  std::string scheme;  // how it goes, in words
  ScoreForm form = ScoreForm::Reps;
  std::optional<base::Duration> cap;
  int parts = 1;  // intervals whose results are added up
  int heats = 1;
  bool lanes = false;  // whether places are lanes
  std::vector<FormPerson> people;
};

/// Of everybody who comes, for every piece that is scored. Fails with NotFound, and as `rehearse_class`.
base::Result<std::vector<FormPiece>> score_form(const GymAtHand& at_hand, const std::string& class_id,
                                                const std::stop_token& stop);

/// How late each comes to the class, s.
std::vector<double> late_in(const domain::GymClass& gym_class, const std::vector<domain::Person>& people);

/// Where a score stops being believed: as far beyond the range of four in five as that range is wide, and at
/// least a quarter of the middle.
std::pair<double, double> believed(const domain::Spread& forecast);

}  // namespace repwright::app
