#include "app/past_session.hpp"

#include <algorithm>

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
                       .runs = replay.runs,
                       .threads = 1,
                       .stop = replay.stop,
                       .history = {}};
  if (replay.bodies == Bodies::Likeliest)
    request.bodies = [&gym](const domain::Person& person, int) {
      return body::median(body::estimate(person, gym.catalogue, gym.constants), gym.constants);
    };
  return rehearse_class(request);
}

bool is_of_piece(const domain::ScoreEntry& entry, const domain::PieceOutcome& piece,
                 const std::vector<std::string>& piece_names) {
  return entry.piece.empty() || piece_names[static_cast<std::size_t>(piece.piece)] == entry.piece;
}

}  // namespace repwright::app
