#pragma once

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "app/gym_learning.hpp"
#include "app/open_gym.hpp"
#include "app/past_session.hpp"
#include "base/random.hpp"
#include "base/require.hpp"
#include "body/knowledge.hpp"
#include "rehearsal/luck.hpp"
#include "support/shipped.hpp"

/// An invented gym whose people have hidden bodies, so that the truth is known.
namespace repwright::app::test {

inline constexpr std::chrono::sys_days first_monday =
    std::chrono::year(2026) / std::chrono::month(1) / std::chrono::day(5);

inline OpenGym gym_of(int people) {
  OpenGym gym{.knowledge = {.catalogue = repwright::test::shipped_catalogue(),
                            .constants = repwright::test::shipped_constants(),
                            .house = {},
                            .hall = {},
                            .scores = {},
                            .boards = {{"pull", "AMRAP 12\n5 ring rows\n10 push-ups\n15 air squats\n"},
                                       {"run", "3 RFT\nrun 400 m\n20 sit-ups\n15 push-ups\n"},
                                       {"swing", "AMRAP 10\n12 kettlebell swings 16/12 kg\n8 burpees\n"}}},
              .people = {},
              .classes = {},
              .versions = {}};
  for (int p = 0; p < people; ++p) {
    domain::Person& person = gym.people.emplace_back();
    person.id = {fmt::format("p{:03}", p)};
    person.name = fmt::format("Person {} Invented", p);
    person.sex = p % 2 == 0 ? domain::Sex::Female : domain::Sex::Male;
    person.age = 22 + p % 30;
    person.training_years = .5 + p % 5;
    person.attends = {"mon"};
  }
  return gym;
}

/// How the people of the gym differ from what the model takes them for.
struct Truth {
  int people = 120;
  int weeks_between = 4;
  std::uint64_t seed = 11;
  bool other_constants = false;  // recovery 1.4 and fade 1.5 times ours
  double drift = 0;              // of the logarithms, per root of a week; of the critical speed half of it
  double fault_sd = 0;           // of each person in each piece
};

struct SimulatedGym {
  OpenGym gym;
  std::vector<body::Normals> points;  // the parameters of each person at the end
};

namespace simulated_detail {

struct Hidden {
  body::BodyEstimate known;  // a point
  std::map<std::string, double> faults;
};

inline Hidden hidden_of(const domain::Person& person, const OpenGym& gym, const Truth& truth) {
  const std::uint64_t key = rehearsal::person_key(person.id);
  Hidden hidden{.known = body::estimate(person, gym.knowledge.catalogue, gym.knowledge.constants),
                .faults = {}};
  const body::Normals normals =
      body::draw_told(hidden.known, {truth.seed}, 0, key, gym.knowledge.constants).normals;
  for (std::size_t i = 0; i < normals.size(); ++i)
    for (std::size_t j = 0; j <= i; ++j)
      hidden.known.parameters.mean.at(i) += hidden.known.spread.at(i).at(j) * normals.at(j);
  hidden.known.parameters.covariance = {};
  hidden.known.spread = {};
  hidden.known.knack = body::knack_behind({truth.seed}, 0, key);
  base::Stream luck({truth.seed}, 1, key, base::Purpose::Demo);
  for (const auto& [board, text] : gym.knowledge.boards)
    hidden.faults[board] = truth.fault_sd * luck.normal();
  return hidden;
}

inline void let_drift(Hidden& hidden, const Truth& truth, base::Stream& luck) {
  using P = body::Parameter;
  const double by = truth.drift * std::sqrt(static_cast<double>(truth.weeks_between));
  for (std::size_t i = 0; i < body::parameter_count; ++i) {
    const P parameter{static_cast<std::uint8_t>(i)};
    if (parameter == P::TopSpeed || parameter == P::OxygenPeak || parameter == P::Style ||
        parameter == P::Mass)
      continue;
    hidden.known.parameters.mean.at(i) += (parameter == P::CriticalSpeed ? .5 : 1.0) * by * luck.normal();
  }
}

inline void write_down(const ClassRehearsal& played, const SessionKey& session,
                       const std::map<domain::PersonId, Hidden>& hidden, GymKnowledge& to) {
  for (std::size_t p = 0; p < played.people.size(); ++p) {
    const domain::PieceOutcome& piece = played.rehearsal.people[p].pieces.front();
    const domain::PersonId& id = played.people[p].id;
    const double score = std::round(piece.score.mean * std::exp(hidden.at(id).faults.at(session.second)));
    domain::ScoreEntry& entry = to.scores.emplace_back();
    entry.date = std::chrono::year_month_day{session.first};
    entry.board_id = session.second;
    entry.person = id;
    entry.version = versions_done(played.fitted.people[p]);
    if (piece.measure == domain::Measure::Seconds)
      entry.value = domain::TimeScore{score * base::second};
    else
      entry.value = domain::RepsScore{score};
    entry.text = fmt::format("{:.0f}", score);
  }
}

}  // namespace simulated_detail

/// A year: three boards in turn, four of five people at each.
inline SimulatedGym simulated_year(const Truth& truth) {
  using namespace simulated_detail;
  SimulatedGym out{.gym = gym_of(truth.people), .points = {}};
  GymKnowledge real = out.gym.knowledge;
  if (truth.other_constants) {
    real.constants.reserve_recovery *= 1.4;
    real.constants.fade *= 1.5;
  }
  std::map<domain::PersonId, Hidden> hidden;
  for (const domain::Person& person : out.gym.people) hidden[person.id] = hidden_of(person, out.gym, truth);
  const board::Reader reader(real.catalogue, real.house);
  constexpr std::array boards{"pull", "run", "swing"};
  for (int week = 0; week < 52; week += truth.weeks_between) {
    const SessionKey session{first_monday + std::chrono::days(7 * week),
                             boards.at(static_cast<std::size_t>(week / truth.weeks_between) % boards.size())};
    Replay replay{
        .bodies = Bodies::Drawn, .runs = 1, .seed = {truth.seed * 1000 + static_cast<unsigned>(week)}};
    std::vector<domain::Person> there;
    for (const domain::Person& person : out.gym.people) {
      base::Stream luck({truth.seed}, static_cast<std::uint64_t>(100 + week),
                        rehearsal::person_key(person.id), base::Purpose::Attendance);
      if (luck.uniform() < .8) there.push_back(person);
      if (week > 0) let_drift(hidden[person.id], truth, luck);
      replay.known[person.id] = hidden[person.id].known;
    }
    const auto played = played_again(real, reader, session, there, replay);
    base::require(played.has_value(), "a simulated session can be played");
    write_down(*played, session, hidden, out.gym.knowledge);
  }
  for (const domain::Person& person : out.gym.people)
    out.points.push_back(hidden[person.id].known.parameters.mean);
  return out;
}

}  // namespace repwright::app::test
