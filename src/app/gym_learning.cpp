#include "app/gym_learning.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/past_session.hpp"
#include "base/civil_date.hpp"
#include "base/statistics.hpp"
#include "body/learning.hpp"
#include "rehearsal/luck.hpp"

namespace repwright::app {
namespace {

using domain::PieceOutcome;
using domain::ScoreEntry;
using std::chrono::sys_days;
using Entries = std::vector<const ScoreEntry*>;

/// Of a normal distribution: half of the middle 80 %.
constexpr double middle_four_fifths = 1.2816;
/// A score of nothing still has a logarithm.
constexpr double least_score = .5;

double log_of(double score) {
  return std::log(std::max(least_score, score));
}

/// Sessions by date, with the entries of each in the order of the sheet.
std::map<SessionKey, Entries> sessions_of(const std::vector<ScoreEntry>& scores) {
  std::map<SessionKey, Entries> sessions;
  for (const ScoreEntry& entry : scores) sessions[{sys_days{entry.date}, entry.board_id}].push_back(&entry);
  return sessions;
}

/// What is known of somebody while the sessions go by.
struct Known {
  body::BodyEstimate now;
  int seen = 0;
  int taught = 0;
  std::optional<sys_days> until;
};

/// An entry that a forecast was made for, and how it is counted.
struct Matched {
  const ScoreEntry* entry;
  const PieceOutcome* piece;
  double value;
  bool beyond;
  bool teaches;
};

/// The pieces that somebody scored, by the board and its piece.
using PieceKey = std::pair<std::string, int>;

class Learner {
 public:
  Learner(const OpenGym& gym, const LearnRequest& request)
      : gym_(gym), request_(request), reader_(gym.knowledge.catalogue, gym.knowledge.house) {
    for (const domain::Person& person : gym.people)
      known_[person.id].now = body::estimate(person, gym.knowledge.catalogue, gym.knowledge.constants);
    by_marks_ = known_;
  }

  base::Result<void> take(const SessionKey& session, const Entries& entries) {
    if (request_.today && session.first > *request_.today) return note(session, "lies in the future");
    if (!gym_.knowledge.boards.contains(session.second)) return note(session, "has no board here");
    const std::vector<domain::Person> there = those_of(entries, gym_.people);
    if (there.empty()) return note(session, "was scored by nobody of this gym");
    drift(there, session.first);
    draw(there);
    const auto played = played_again(gym_.knowledge, reader_, session, there, replay());
    if (!played && played.error().code == base::ErrorCode::Stopped) return tl::unexpected(played.error());
    if (!played) return note(session, played.error().message);
    for (std::size_t p = 0; p < there.size(); ++p) teach(session, *played, p, entries);
    remember(*played, entries, session);
    return {};
  }

  GymLearning result() && {
    for (const domain::Person& person : gym_.people) {
      const Known& known = known_.at(person.id);
      out_.people.push_back({person.id, by_marks_.at(person.id).now, known.now, known.taught,
                             known.until.value_or(sys_days{})});
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
        known.now =
            body::after_days(known.now, prior_of(person), static_cast<double>((day - *known.until).count()));
      known.until = day;
    }
  }

  body::BodyEstimate prior_of(const domain::Person& person) const {
    domain::Person bare = person;
    bare.marks.clear();
    return body::estimate(bare, gym_.knowledge.catalogue, gym_.knowledge.constants);
  }

  void draw(const std::vector<domain::Person>& there) {
    bodies_.clear();
    normals_.clear();
    for (const domain::Person& person : there)
      for (int run = 0; run < request_.runs; ++run) {
        auto drawn =
            body::draw_told(known_.at(person.id).now, {request_.seed}, static_cast<std::uint64_t>(run),
                            rehearsal::person_key(person.id), gym_.knowledge.constants);
        bodies_[person.id].push_back(drawn.body);
        normals_[person.id].push_back(drawn.normals);
      }
  }

  Replay replay() const {
    return {.bodies = Bodies::Given,
            .runs = request_.runs,
            .stop = request_.stop,
            .given = [this](const domain::Person& person,
                            int run) { return bodies_.at(person.id).at(static_cast<std::size_t>(run)); },
            .keep_draws = true,
            .threads = request_.threads,
            .seed = {request_.seed}};
  }

  /// The entries of that person which the rehearsal has a forecast for.
  std::vector<Matched> matched(const SessionKey& session, const ClassRehearsal& played, std::size_t person,
                               const Entries& entries) {
    std::vector<Matched> out;
    const domain::PersonOutcome& outcome = played.rehearsal.people[person];
    const std::string versions = versions_done(played.fitted.people[person]);
    for (const ScoreEntry* entry : entries) {
      if (entry->person != outcome.person) continue;
      const auto of = std::ranges::find_if(outcome.pieces, [&](const PieceOutcome& piece) {
        return is_of_piece(*entry, piece, played.rehearsal.piece_names);
      });
      const auto leave_out = [&](const char* why) {
        note(session, fmt::format("{}: {}", outcome.name, why));
      };
      if (of == outcome.pieces.end()) {
        leave_out("the board has no such piece");
        continue;
      }
      if (std::ranges::any_of(out, [&](const Matched& other) { return other.piece == &*of; })) {
        leave_out("a second score of the same piece");
        continue;
      }
      const bool beyond = std::holds_alternative<domain::CappedScore>(entry->value);
      const auto value = beyond ? cap_of(*entry, *of) : score_in_measure(entry->value, *of);
      if (!value || *value <= 0) {
        leave_out("nothing that can be compared with the forecast");
        continue;
      }
      const bool same = entry->version.empty() || entry->version == versions;
      if (!same) leave_out("another version than the forecast's; it does not teach");
      out.push_back({entry, &*of, *value, beyond, same && entry->flag == domain::DayFlag::None});
    }
    return out;
  }

  static std::optional<double> cap_of(const ScoreEntry& entry, const PieceOutcome& piece) {
    const auto& capped = std::get<domain::CappedScore>(entry.value);
    if (piece.measure != domain::Measure::Seconds) return std::nullopt;
    if (capped.cap) return capped.cap->si();
    return piece.capped > 0 ? std::optional(piece.score.p90) : std::nullopt;
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
    const std::vector<Matched> own = matched(session, played, person, entries);
    Known& known = known_.at(played.people[person].id);
    const std::vector<body::Normals>& drawn = normals_.at(played.people[person].id);
    const body::BodyEstimate before = known.now;
    std::vector<body::ScoreSeen> teaching;
    std::vector<body::ModelFault*> faults;
    for (const Matched& score : own) {
      body::ModelFault& fault =
          faults_[{score.entry->person, PieceKey{score.entry->board_id, score.piece->piece}}];
      body::ScoreSeen seen{.seen = log_of(score.value),
                           .forecasts = forecasts_of(played, person, score.piece->piece),
                           .fault = fault,
                           .day_sd = score.piece->sd_day / std::max(least_score, score.piece->score.p50),
                           .beyond = score.beyond};
      const body::Lesson lesson = body::learn(before, drawn, std::span(&seen, 1)).lessons.front();
      keep(score, lesson, ++known.seen);
      if (!score.teaches) continue;
      teaching.push_back(std::move(seen));
      faults.push_back(&fault);
    }
    known.taught += static_cast<int>(teaching.size());
    if (teaching.empty()) return;
    const body::Learned learned = body::learn(before, drawn, teaching);
    known.now = learned.after;
    for (std::size_t i = 0; i < faults.size(); ++i) *faults[i] = learned.lessons[i].fault;
  }

  void keep(const Matched& score, const body::Lesson& lesson, int nth) {
    ForecastScore out;
    out.entry = *score.entry;
    out.measure = score.piece->measure;
    out.value = score.value;
    out.p50 = std::exp(lesson.expected);
    out.p10 = std::exp(lesson.expected - middle_four_fifths * lesson.sd);
    out.p90 = std::exp(lesson.expected + middle_four_fifths * lesson.sd);
    out.nth = nth;
    out.weight = score.teaches ? lesson.weight : 0;
    const PieceKey key{score.entry->board_id, score.piece->piece};
    if (const auto last = last_.find({score.entry->person, key}); last != last_.end())
      out.last = last->second;
    if (const auto group = group_.find(key); group != group_.end())
      out.group = base::quantile(group->second, .5);
    if (score.beyond) return;
    out_.forecasts.push_back(std::move(out));
  }

  /// What the next session's plain guesses are made of.
  void remember(const ClassRehearsal& played, const Entries& entries, const SessionKey& session) {
    for (const domain::PersonOutcome& outcome : played.rehearsal.people)
      for (const ScoreEntry* entry : entries)
        for (const PieceOutcome& piece : outcome.pieces) {
          if (entry->person != outcome.person || entry->flag != domain::DayFlag::None) continue;
          if (!is_of_piece(*entry, piece, played.rehearsal.piece_names)) continue;
          const auto value = score_in_measure(entry->value, piece);
          if (!value || *value <= 0) continue;
          const PieceKey key{session.second, piece.piece};
          last_[{entry->person, key}] = *value;
          group_[key].push_back(*value);
        }
  }

  const OpenGym& gym_;
  const LearnRequest& request_;
  board::Reader reader_;
  std::map<domain::PersonId, Known> known_, by_marks_;
  std::map<domain::PersonId, std::vector<body::Body>> bodies_;
  std::map<domain::PersonId, std::vector<body::Normals>> normals_;
  std::map<std::pair<domain::PersonId, PieceKey>, body::ModelFault> faults_;
  std::map<std::pair<domain::PersonId, PieceKey>, double> last_;
  std::map<PieceKey, std::vector<double>> group_;
  GymLearning out_;
};

}  // namespace

base::Result<GymLearning> learn_gym(const OpenGym& gym, const LearnRequest& request) {
  Learner learner(gym, request);
  const std::map<SessionKey, Entries> sessions = sessions_of(gym.knowledge.scores);
  int done = 0;
  for (const auto& [session, entries] : sessions) {
    if (const auto taken = learner.take(session, entries); !taken) return tl::unexpected(taken.error());
    if (request.progress) request.progress(++done, static_cast<int>(sessions.size()));
  }
  return std::move(learner).result();
}

}  // namespace repwright::app
