#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/gym_learning.hpp"
#include "app/score_matching.hpp"
#include "board/read.hpp"
#include "body/learning.hpp"

/// One session after the other.
namespace repwright::app {

/// Sessions by date, with the entries of each in the order of the sheet; all entries if `of` is empty.
std::map<SessionKey, Entries> sessions_of(const std::vector<domain::ScoreEntry>& scores,
                                          const std::set<domain::PersonId>& of);

/// What is known of somebody while the sessions go by.
struct KnownSoFar {
  body::BodyEstimate by_marks;
  body::Knowledge now;
  std::map<PieceKey, std::size_t> levels{};  // their indices
  int seen = 0;
  int taught = 0;
  std::vector<TaughtBy> taught_by{};
  std::optional<std::chrono::sys_days> until{};
};

/// All that the sessions so far have made: where learning goes on.
struct LearnedSoFar {
  std::map<domain::PersonId, KnownSoFar> people;
  std::map<std::pair<domain::PersonId, PieceKey>, double> last;  // what plain guesses are made of
  std::map<PieceKey, std::vector<double>> group;
  std::vector<ForecastScore> forecasts;
  std::vector<std::string> notes;
  std::map<std::pair<std::string, int>, domain::Block> works;
};

/// Lets the sessions of a gym teach, in the order in which they are taken.
class Learner {
 public:
  /// Goes on from `so_far`; from what marks tell where it is empty. Gym and request must outlive the learner.
  Learner(const OpenGym& gym, const LearnRequest& request, LearnedSoFar so_far);

  /// Fails with Stopped.
  base::Result<void> take(const SessionKey& session, const Entries& entries);

  const LearnedSoFar& so_far() const& { return now_; }
  LearnedSoFar so_far() && { return std::move(now_); }
  /// In the order of the gym's people.
  std::vector<LearnedPerson> people() const;

 private:
  base::Result<void> note(const SessionKey& session, const std::string& why);
  void drift(const std::vector<domain::Person>& there, std::chrono::sys_days day);
  Replay replay(const std::vector<domain::Person>& there, const Entries& entries,
                const std::string& board) const;
  std::vector<body::Normals> drawn_of(const domain::PersonId& person) const;
  std::vector<double> forecasts_of(const ClassRehearsal& played, std::size_t person, int piece) const;
  void teach(const SessionKey& session, const ClassRehearsal& played, std::size_t person,
             const Entries& entries);
  void keep(const MatchedScore& score, const body::Lesson& lesson, int nth);
  void keep_works(const ClassRehearsal& played, const std::string& board);
  void remember(const ClassRehearsal& played, const Entries& entries, const SessionKey& session);

  const OpenGym& gym_;
  const LearnRequest& request_;
  board::Reader reader_;
  LearnedSoFar now_;
};

}  // namespace repwright::app
