#include "app/past_session.hpp"

#include <algorithm>

#include "base/overloaded.hpp"
#include "body/estimate.hpp"

namespace repwright::app {

std::vector<domain::Person> those_of(const std::vector<const domain::ScoreEntry*>& entries,
                                     const std::vector<domain::Person>& people) {
  std::vector<domain::Person> there;
  for (const domain::Person& person : people)
    if (std::ranges::any_of(entries, [&](const domain::ScoreEntry* e) { return e->person == person.id; }))
      there.push_back(person);
  return there;
}

base::Result<ClassRehearsal> played_again(const GymKnowledge& gym, const board::Reader& reader,
                                          const SessionKey& session,
                                          const std::vector<domain::Person>& people, const Replay& replay) {
  domain::GymClass gym_class;
  gym_class.date = std::chrono::year_month_day(session.first);
  const board::Reading reading = reader.read(gym.boards.at(session.second));
  ClassRequest request{.reading = reading,
                       .gym = gym,
                       .people = people,
                       .gym_class = gym_class,
                       .heads = {},
                       .seed = replay.seed,
                       .runs = replay.runs,
                       .threads = replay.threads,
                       .keep_draws = replay.keep_draws,
                       .stop = replay.stop,
                       .known = replay.known,
                       .said = replay.said,
                       .history = {}};
  if (replay.bodies == Bodies::Likeliest)
    request.bodies = [&gym](const domain::Person& person, int) {
      return body::median(body::estimate(person, gym.catalogue, gym.constants), gym.constants);
    };
  return rehearse_class(request);
}

std::optional<double> score_in_measure(const domain::ScoreValue& score, const domain::PieceOutcome& piece) {
  const auto when = [&](domain::Measure measure, double value) {
    return piece.measure == measure ? std::optional(value) : std::nullopt;
  };
  return std::visit(
      base::Overloaded{
          [&](const domain::TimeScore& s) { return when(domain::Measure::Seconds, s.time.si()); },
          [&](const domain::RoundsScore& s) {
            return piece.reps_per_round > 0
                       ? when(domain::Measure::Reps, s.rounds * piece.reps_per_round + s.reps)
                       : std::nullopt;
          },
          [&](const domain::RepsScore& s) { return when(domain::Measure::Reps, s.reps); },
          [&](const domain::LoadScore& s) { return when(domain::Measure::Kilograms, s.load.si()); },
          [&](const domain::DistanceScore& s) { return when(domain::Measure::Metres, s.distance.si()); },
          [&](const domain::KcalScore& s) { return when(domain::Measure::Kilocalories, s.kcal); },
          [](const auto&) -> std::optional<double> { return std::nullopt; }},
      score);
}

bool is_of_piece(const domain::ScoreEntry& entry, const domain::PieceOutcome& piece,
                 const std::vector<std::string>& piece_names) {
  return entry.piece.empty() || piece_names[static_cast<std::size_t>(piece.piece)] == entry.piece;
}

}  // namespace repwright::app
