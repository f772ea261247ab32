#include "app/gym_learning.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/known_people.hpp"
#include "app/score_matching.hpp"
#include "base/civil_date.hpp"
#include "base/statistics.hpp"
#include "body/learning.hpp"
#include "rehearsal/luck.hpp"

namespace repwright::app {
namespace {

using domain::PieceOutcome;
using domain::ScoreEntry;
using std::chrono::sys_days;
using std::chrono::year_month_day;

/// A score of nothing still has a logarithm.
constexpr double least_score = .5;

double log_of(double score) {
  return std::log(std::max(least_score, score));
}

/// Sessions by date, with the entries of each in the order of the sheet.
std::map<SessionKey, Entries> sessions_of(const std::vector<ScoreEntry>& scores,
                                          const std::set<domain::PersonId>& of) {
  std::map<SessionKey, Entries> sessions;
  for (const ScoreEntry& entry : scores)
    if (of.empty() || of.contains(entry.person))
      sessions[{sys_days{entry.date}, entry.board_id}].push_back(&entry);
  return sessions;
}

/// What is known of somebody while the sessions go by.
struct Known {
  body::Knowledge now;
  std::map<PieceKey, std::size_t> levels;  // their indices
  int seen = 0;
  int taught = 0;
  std::vector<TaughtBy> taught_by{};
  std::optional<sys_days> until;
};

class Learner {
 public:
  Learner(const OpenGym& gym, const LearnRequest& request)
      : gym_(gym), request_(request), reader_(gym.knowledge.catalogue, gym.knowledge.house) {
    for (const domain::Person& person : gym.people)
      known_[person.id].now.body = body::estimate(person, gym.knowledge.catalogue, gym.knowledge.constants);
    by_marks_ = known_;
  }

  base::Result<void> take(const SessionKey& session, const Entries& entries) {
    if (request_.today && session.first > *request_.today) return note(session, "lies in the future");
    if (!gym_.knowledge.boards.contains(session.second)) return note(session, "has no board here");
    const std::vector<domain::Person> there = those_of(entries, gym_.people);
    if (there.empty()) return note(session, "was scored by nobody of this gym");
    drift(there, session.first);
    const auto played = played_again(gym_.knowledge, reader_, session, there, replay(there, entries));
    if (!played && played.error().code == base::ErrorCode::Stopped) return tl::unexpected(played.error());
    if (!played) return note(session, played.error().message);
    for (std::size_t p = 0; p < there.size(); ++p) teach(session, *played, p, entries);
    remember(*played, entries, session);
    return {};
  }

  GymLearning result() && {
    for (const domain::Person& person : gym_.people) {
      const Known& known = known_.at(person.id);
      out_.people.push_back({person.id, by_marks_.at(person.id).now.body, known.now.body, known.taught,
                             known.until.value_or(sys_days{}), known.taught_by});
    }
    return std::move(out_);
  }

 private:
  base::Result<void> note(const SessionKey& session, const std::string& why) {
    out_.notes.push_back(fmt::format(
        "{}, {}: {}", base::format_date(std::chrono::year_month_day{session.first}), session.second, why));
    return {};
  }

  void drift(const std::vector<domain::Person>& there, sys_days day) {
    for (const domain::Person& person : there) {
      Known& known = known_.at(person.id);
      if (known.until)
        known.now = body::after_days(known.now, without_marks(person, gym_.knowledge),
                                     static_cast<double>((day - *known.until).count()));
      known.until = day;
    }
  }

  Replay replay(const std::vector<domain::Person>& there, const Entries& entries) const {
    Replay replay{.bodies = Bodies::Drawn,
                  .runs = request_.runs,
                  .stop = request_.stop,
                  .known = {},
                  .said = versions_said(entries, gym_.knowledge.catalogue),
                  .keep_draws = true,
                  .threads = request_.threads,
                  .seed = {request_.seed}};
    for (const domain::Person& person : there) replay.known[person.id] = known_.at(person.id).now.body;
    return replay;
  }

  /// The normals behind the bodies that the rehearsal draws.
  std::vector<body::Normals> drawn_of(const domain::PersonId& person) const {
    std::vector<body::Normals> out;
    out.reserve(static_cast<std::size_t>(request_.runs));
    for (int run = 0; run < request_.runs; ++run)
      out.push_back(body::draw_told(known_.at(person).now.body, {request_.seed},
                                    static_cast<std::uint64_t>(run), rehearsal::person_key(person),
                                    gym_.knowledge.constants)
                        .normals);
    return out;
  }

  std::vector<double> forecasts_of(const ClassRehearsal& played, std::size_t person, int piece) const {
    std::vector<double> out(static_cast<std::size_t>(request_.runs));
    for (const domain::Draw& each : played.rehearsal.draws)
      if (each.person == static_cast<int>(person) && each.piece == piece)
        out.at(static_cast<std::size_t>(each.run)) = log_of(each.score);
    return out;
  }

  void teach(const SessionKey& session, const ClassRehearsal& played, std::size_t person,
             const Entries& entries) {
    const auto [own, notes] = match_scores(entries, played, person);
    for (const std::string& why : notes) note(session, why);
    if (own.empty()) return;
    const domain::PersonId& id = played.people[person].id;
    Known& known = known_.at(id);
    const std::vector<body::Normals> drawn = drawn_of(id);
    std::vector<body::ScoreSeen> teaching;
    std::vector<PieceKey> pieces;
    TaughtBy taught{
        .date = year_month_day{session.first}, .board = session.second, .scores = {}, .moved = {}};
    for (const MatchedScore& score : own) {
      body::ScoreSeen seen{.seen = log_of(score.value),
                           .forecasts = forecasts_of(played, person, score.piece->piece),
                           .level = level_of(known, score.key),
                           .day_sd = score.piece->sd_day / std::max(least_score, score.piece->score.p50),
                           .beyond = score.beyond};
      keep(score, body::learn(known.now, drawn, std::span(&seen, 1)).lessons.front(), ++known.seen);
      if (!score.teaches) continue;
      teaching.push_back(std::move(seen));
      pieces.push_back(score.key);
      taught.scores.push_back(score.entry->text);
    }
    if (teaching.empty()) return;
    known.taught += static_cast<int>(teaching.size());
    const body::Normals before = known.now.body.parameters.mean;
    body::Learned learned = body::learn(known.now, drawn, teaching);
    for (std::size_t i = 0; i < pieces.size(); ++i) known.levels[pieces[i]] = learned.lessons[i].level;
    known.now = std::move(learned.after);
    for (std::size_t i = 0; i < before.size(); ++i)
      taught.moved.at(i) = known.now.body.parameters.mean.at(i) - before.at(i);
    known.taught_by.push_back(std::move(taught));
  }

  static std::optional<std::size_t> level_of(const Known& known, const PieceKey& piece) {
    const auto at = known.levels.find(piece);
    return at == known.levels.end() ? std::nullopt : std::optional(at->second);
  }

  void keep(const MatchedScore& score, const body::Lesson& lesson, int nth) {
    ForecastScore out;
    out.entry = *score.entry;
    out.measure = score.piece->measure;
    out.value = score.value;
    out.p10 = std::exp(lesson.p10);
    out.p50 = std::exp(lesson.p50);
    out.p90 = std::exp(lesson.p90);
    out.below = lesson.below;
    out.nth = nth;
    out.weight = score.teaches ? lesson.weight : 0;
    if (const auto last = last_.find({score.entry->person, score.key}); last != last_.end())
      out.last = last->second;
    if (const auto group = group_.find(score.key); group != group_.end())
      out.group = base::quantile(group->second, .5);
    if (score.beyond) return;
    out_.forecasts.push_back(std::move(out));
  }

  /// What the next session's plain guesses are made of.
  void remember(const ClassRehearsal& played, const Entries& entries, const SessionKey& session) {
    for (std::size_t p = 0; p < played.people.size(); ++p)
      for (const ScoreEntry* entry : entries)
        for (const PieceOutcome& piece : played.rehearsal.people[p].pieces) {
          if (entry->person != played.people[p].id || entry->flag != domain::DayFlag::None) continue;
          if (!is_of_piece(*entry, piece, played.rehearsal.piece_names)) continue;
          const auto value = score_in_measure(entry->value, piece);
          if (!value || *value <= 0) continue;
          const PieceKey key{session.second, piece.piece, versions_done(played.fitted.people[p])};
          last_[{entry->person, key}] = *value;
          group_[key].push_back(*value);
        }
  }

  const OpenGym& gym_;
  const LearnRequest& request_;
  board::Reader reader_;
  std::map<domain::PersonId, Known> known_, by_marks_;
  std::map<std::pair<domain::PersonId, PieceKey>, double> last_;
  std::map<PieceKey, std::vector<double>> group_;
  GymLearning out_;
};

}  // namespace

base::Result<GymLearning> learn_gym(const OpenGym& gym, const LearnRequest& request) {
  Learner learner(gym, request);
  const std::map<SessionKey, Entries> sessions = sessions_of(gym.knowledge.scores, request.of);
  int done = 0;
  for (const auto& [session, entries] : sessions) {
    if (const auto taken = learner.take(session, entries); !taken) return tl::unexpected(taken.error());
    if (request.progress) request.progress(++done, static_cast<int>(sessions.size()));
  }
  return std::move(learner).result();
}

}  // namespace repwright::app
