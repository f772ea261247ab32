#include "app/lately.hpp"

#include <algorithm>

#include "app/past_session.hpp"
#include "base/overloaded.hpp"

namespace repwright::app {
namespace {

using domain::PersonId;
using domain::PieceOutcome;
using domain::ScoreEntry;

constexpr int weeks = 4;

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
      if (!is_of_piece(*entry, piece, piece_names)) continue;
      sum += share_of(*entry, piece);
      ++count;
    }
  }
  return count > 0 ? sum / count : 1;
}

}  // namespace

std::map<PersonId, rehearsal::History> lately(const GymKnowledge& gym,
                                              const std::vector<domain::Person>& people,
                                              std::chrono::sys_days day) {
  std::map<PersonId, rehearsal::History> histories;
  const board::Reader reader(gym.catalogue, gym.house);
  for (const auto& [session, entries] : sessions_before(gym, day)) {
    const std::vector<domain::Person> there = those_of(entries, people);
    if (there.empty()) continue;
    const auto played = played_again(gym, reader, session, there, {});
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
