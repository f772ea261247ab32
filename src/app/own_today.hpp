#pragma once

#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "app/gym_at_hand.hpp"
#include "app/score_form.hpp"
#include "base/result.hpp"

/// What a member is told of the next class that they are in.
namespace repwright::app {

/// One piece as this person does it.
struct OwnPiece {
  std::string piece;  // as a score names it
  std::string title;
  std::string scheme;  // how it goes, in words
  ScoreForm form = ScoreForm::Reps;
  std::optional<base::Duration> cap;
  int parts = 1;
  int heats = 1;
  bool lanes = false;
  FormPerson own;
  std::vector<std::string> lines;     // '9 ring rows', 'run 400 m': as this person does them
  std::string starts_with;            // the line they begin with where every second person begins elsewhere
  std::vector<std::string> partners;  // names
};

struct OwnToday {
  std::string class_id;
  std::optional<std::chrono::year_month_day> date;
  std::optional<int> start_minute;
  std::string board_title;
  std::string board_text;
  std::vector<std::string> told;  // action words, for this person
  std::vector<OwnPiece> pieces;
};

/// The first class from that day on that the person is in; null if there is none.
const domain::GymClass* own_class(const OpenGym& gym, const domain::PersonId& person,
                                  std::chrono::year_month_day today);

/// Nothing where the person is on no list from that day on. Fails as `score_form`.
base::Result<std::optional<OwnToday>> own_today(const GymAtHand& at_hand, const domain::PersonId& person,
                                                std::chrono::year_month_day today,
                                                const std::stop_token& stop);

/// A line as the person does it, in a few words.
std::string line_words(const domain::FittedItem& item, const domain::Catalogue& catalogue);

}  // namespace repwright::app
