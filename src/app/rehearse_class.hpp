#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "app/done_pieces.hpp"
#include "app/own_pace.hpp"
#include "base/random.hpp"
#include "base/result.hpp"
#include "board/read.hpp"
#include "body/body.hpp"
#include "body/constants.hpp"
#include "body/estimate.hpp"
#include "domain/catalogue.hpp"
#include "domain/fitted.hpp"
#include "domain/gym_class.hpp"
#include "domain/hall.hpp"
#include "domain/house.hpp"
#include "domain/people.hpp"
#include "domain/rehearsal.hpp"
#include "domain/score.hpp"
#include "rehearsal/findings.hpp"
#include "rehearsal/kit_demand.hpp"
#include "rehearsal/plain_fit.hpp"
#include "timetable/timetable.hpp"

namespace repwright::app {

/// What a gym knows, whoever comes: read once, used for every class.
struct GymKnowledge {
  domain::Catalogue catalogue;
  body::Constants constants;
  domain::House house;
  domain::Hall hall;
  std::vector<domain::ScoreEntry> scores;     // past ones, for what is more than lately; may be empty
  std::map<std::string, std::string> boards;  // texts by id, as far as the scores name them
};

struct ClassRequest {
  const board::Reading& reading;
  const GymKnowledge& gym;
  const std::vector<domain::Person>& people;
  const domain::GymClass& gym_class;
  std::optional<int> heads;
  rehearsal::FitRule rule = rehearsal::FitRule::WithinLimits;
  base::Seed seed{1};
  int runs = 200;
  int threads = 0;  // 0: as many as the machine has
  bool keep_draws = false;
  std::stop_token stop;
  /// Whose bodies are played in each run; empty: drawn from what the marks of each person tell.
  std::function<body::Body(const domain::Person& person, int run)> bodies{};
  /// What their scores have taught of people; who is not in it is estimated from marks.
  std::map<domain::PersonId, body::BodyEstimate> known{};
  /// What they have scored before; if null, nothing. Must outlive the request.
  const DoneBefore* done = nullptr;
  rehearsal::VersionsSaid said{};  // what people really did, of a session that is over
  /// What people have done lately, as `lately` tells; who is not in it is not warned.
  std::map<domain::PersonId, rehearsal::History> history{};
};

struct ClassRehearsal {
  std::vector<domain::Person> people;  // who came
  timetable::Timetable timetable;
  domain::FittedBoard fitted;
  domain::Rehearsal rehearsal;             // lines of the text filled in
  std::vector<rehearsal::GroupReps> reps;  // of each who came, over all pieces
  std::vector<rehearsal::KitNeed> kit;     // of every piece, as far as the hall lists kit
};

/// Who comes and what is known of their bodies: the same for every version of a board, gathered once.
struct Gathered {
  std::vector<domain::Person> people;
  std::vector<base::Duration> late;
  std::vector<body::BodyEstimate> estimates;
  OwnPaces paces{};
};
/// Fails with Invalid when the board has no work or nobody comes, NotFound for people whom the class names
/// and nobody knows.
base::Result<Gathered> gather(const ClassRequest& request);

/// Rehearses a class from its read board to findings that name lines of the text. Fails as `gather` does, and
/// with Stopped.
base::Result<ClassRehearsal> rehearse_class(const ClassRequest& request);
/// The same with people who were gathered before, for this board or another one with work on it.
base::Result<ClassRehearsal> rehearse_class(const ClassRequest& request, const Gathered& gathered);

}  // namespace repwright::app
