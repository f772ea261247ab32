#include "app/lately.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "base/overloaded.hpp"
#include "body/estimate.hpp"

namespace repwright::app {
namespace {

using domain::PersonId;
using domain::PieceOutcome;
using domain::ScoreEntry;

constexpr int weeks = 4;

/// The same board on the same day.
using SessionKey = std::pair<std::chrono::sys_days, std::string>;
using Sessions = std::map<SessionKey, std::vector<const ScoreEntry*>>;

Sessions sessions_before(const GymKnowledge& gym, std::chrono::sys_days day) {
  Sessions sessions;
  for (const ScoreEntry& entry : gym.scores) {
    const std::chrono::sys_days date{entry.date};
    if (date < day && date >= day - std::chrono::weeks(weeks) && gym.boards.contains(entry.board_id))
      sessions[{date, entry.board_id}].push_back(&entry);
  }
  return sessions;
}

/// How much of the piece as played the score stands for; 1 where it does not say.
double share_of(const ScoreEntry& entry, const PieceOutcome& piece) {
  if (piece.measure != domain::Measure::Reps || piece.score.mean < 1) return 1;
  const auto against = [&](double reps) { return std::clamp(reps / piece.score.mean, 0.1, 10.0); };
  return std::visit(base::Overloaded{[&](const domain::RoundsScore& score) {
                                       return against(score.rounds * piece.reps_per_round + score.reps);
                                     },
                                     [&](const domain::RepsScore& score) { return against(score.reps); },
                                     [](const auto&) { return 1.0; }},
                    entry.value);
}

/// The mean share over what this person scored in the session.
double share_of(const std::vector<const ScoreEntry*>& entries, const domain::PersonOutcome& outcome,
                const std::vector<std::string>& piece_names) {
  double sum = 0;
  int count = 0;
  for (const ScoreEntry* entry : entries) {
    if (entry->person != outcome.person) continue;
    for (const PieceOutcome& piece : outcome.pieces) {
      if (!entry->piece.empty() && piece_names[static_cast<std::size_t>(piece.piece)] != entry->piece)
        continue;
      sum += share_of(*entry, piece);
      ++count;
    }
  }
  return count > 0 ? sum / count : 1;
}

std::vector<domain::Person> those_of(const std::vector<const ScoreEntry*>& entries,
                                     const std::vector<domain::Person>& people) {
  std::vector<domain::Person> there;
  for (const domain::Person& person : people)
    if (std::ranges::any_of(entries, [&](const ScoreEntry* e) { return e->person == person.id; }))
      there.push_back(person);
  return there;
}

/// The session once more, by the likeliest bodies.
base::Result<ClassRehearsal> played_again(const GymKnowledge& gym, const SessionKey& session,
                                          const std::vector<domain::Person>& people) {
  domain::GymClass gym_class;
  gym_class.date = std::chrono::year_month_day(session.first);
  const board::Reading reading = board::read(gym.boards.at(session.second), gym.catalogue, gym.house);
  return rehearse_class({.reading = reading,
                         .gym = gym,
                         .people = people,
                         .gym_class = gym_class,
                         .heads = {},
                         .runs = 1,
                         .threads = 1,
                         .stop = {},
                         .bodies =
                             [&gym](const domain::Person& person, int) {
                               return body::median(body::estimate(person, gym.catalogue, gym.constants),
                                                   gym.constants);
                             },
                         .history = {}});
}

}  // namespace

std::map<PersonId, rehearsal::History> lately(const GymKnowledge& gym,
                                              const std::vector<domain::Person>& people,
                                              const domain::GymClass& gym_class) {
  std::map<PersonId, rehearsal::History> histories;
  if (!gym_class.date) return histories;
  const std::chrono::sys_days day{*gym_class.date};
  for (const auto& [session, entries] : sessions_before(gym, day)) {
    const std::vector<domain::Person> there = those_of(entries, people);
    if (there.empty()) continue;
    const auto played = played_again(gym, session, there);
    if (!played) continue;
    const auto weeks_ago = static_cast<int>((day - session.first - std::chrono::days(1)).count() / 7);
    for (std::size_t p = 0; p < there.size(); ++p) {
      auto& history = histories[there[p].id];
      history.weeks.resize(weeks);
      const double share = share_of(entries, played->rehearsal.people[p], played->rehearsal.piece_names);
      auto& week = history.weeks[static_cast<std::size_t>(weeks - 1 - weeks_ago)];
      for (std::size_t g = 0; g < body::group_count; ++g) week[g] += share * played->reps[p][g];
    }
  }
  return histories;
}

}  // namespace repwright::app
