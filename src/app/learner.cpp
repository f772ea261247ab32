#include "app/learner.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/known_people.hpp"
#include "base/civil_date.hpp"
#include "base/statistics.hpp"
#include "domain/board_search.hpp"
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

std::optional<std::size_t> level_of(const KnownSoFar& known, const PieceKey& piece) {
  const auto at = known.levels.find(piece);
  return at == known.levels.end() ? std::nullopt : std::optional(at->second);
}

}  // namespace

std::map<SessionKey, Entries> sessions_of(const std::vector<ScoreEntry>& scores,
                                          const std::set<domain::PersonId>& of) {
  std::map<SessionKey, Entries> sessions;
  for (const ScoreEntry& entry : scores)
    if (of.empty() || of.contains(entry.person))
      sessions[{sys_days{entry.date}, entry.board_id}].push_back(&entry);
  return sessions;
}

Learner::Learner(const OpenGym& gym, const LearnRequest& request, LearnedSoFar so_far)
    : gym_(gym),
      request_(request),
      reader_(gym.knowledge.catalogue, gym.knowledge.house),
      now_(std::move(so_far)) {
  if (!now_.people.empty()) return;
  for (const domain::Person& person : gym.people) {
    KnownSoFar& known = now_.people[person.id];
    known.by_marks = body::estimate(person, gym.knowledge.catalogue, gym.knowledge.constants);
    known.now.body = known.by_marks;
  }
}

base::Result<void> Learner::take(const SessionKey& session, const Entries& entries) {
  if (request_.today && session.first > *request_.today) return note(session, "lies in the future");
  if (!gym_.knowledge.boards.contains(session.second)) return note(session, "has no board here");
  const std::vector<domain::Person> there = those_of(entries, gym_.people);
  if (there.empty()) return note(session, "was scored by nobody of this gym");
  drift(there, session.first);
  const auto played =
      played_again(gym_.knowledge, reader_, session, there, replay(there, entries, session.second));
  if (!played && played.error().code == base::ErrorCode::Stopped) return tl::unexpected(played.error());
  if (!played) return note(session, played.error().message);
  for (std::size_t p = 0; p < there.size(); ++p) teach(session, *played, p, entries);
  remember(*played, entries, session);
  keep_works(*played, session.second);
  return {};
}

std::vector<LearnedPerson> Learner::people() const {
  std::vector<LearnedPerson> out;
  for (const domain::Person& person : gym_.people) {
    const KnownSoFar& known = now_.people.at(person.id);
    out.push_back({person.id,
                   known.by_marks,
                   known.now.body,
                   known.taught,
                   known.until.value_or(sys_days{}),
                   known.taught_by,
                   {known.now.levels, known.levels}});
  }
  return out;
}

base::Result<void> Learner::note(const SessionKey& session, const std::string& why) {
  now_.notes.push_back(fmt::format(
      "{}, {}: {}", base::format_date(std::chrono::year_month_day{session.first}), session.second, why));
  return {};
}

void Learner::drift(const std::vector<domain::Person>& there, sys_days day) {
  for (const domain::Person& person : there) {
    KnownSoFar& known = now_.people.at(person.id);
    if (known.until)
      known.now = body::after_days(known.now, without_marks(person, gym_.knowledge),
                                   static_cast<double>((day - *known.until).count()));
    known.until = day;
  }
}

Replay Learner::replay(const std::vector<domain::Person>& there, const Entries& entries,
                       const std::string& board) const {
  const auto of_board = [&](const auto& level) { return std::get<0>(level.first) == board; };
  Replay replay{.bodies = Bodies::Drawn,
                .runs = request_.runs,
                .stop = request_.stop,
                .known = {},
                .said = versions_said(entries, gym_.knowledge.catalogue),
                .keep_draws = true,
                .threads = request_.threads,
                .seed = {request_.seed}};
  for (const domain::Person& person : there) {
    const KnownSoFar& known = now_.people.at(person.id);
    body::BodyEstimate& body = replay.known[person.id] = known.now.body;
    if (std::ranges::any_of(known.levels, of_board)) body.knack = 0;  // it is in the level
  }
  return replay;
}

/// The normals behind the bodies that the rehearsal draws.
std::vector<body::Normals> Learner::drawn_of(const domain::PersonId& person) const {
  std::vector<body::Normals> out;
  out.reserve(static_cast<std::size_t>(request_.runs));
  for (int run = 0; run < request_.runs; ++run)
    out.push_back(body::normals_behind({request_.seed}, static_cast<std::uint64_t>(run),
                                       rehearsal::person_key(person)));
  return out;
}

std::vector<double> Learner::forecasts_of(const ClassRehearsal& played, std::size_t person, int piece) const {
  std::vector<double> out(static_cast<std::size_t>(request_.runs));
  for (const domain::Draw& each : played.rehearsal.draws)
    if (each.person == static_cast<int>(person) && each.piece == piece)
      out.at(static_cast<std::size_t>(each.run)) = log_of(each.score);
  return out;
}

void Learner::teach(const SessionKey& session, const ClassRehearsal& played, std::size_t person,
                    const Entries& entries) {
  const auto [own, notes] = match_scores(entries, played, person);
  for (const std::string& why : notes) note(session, why);
  if (own.empty()) return;
  const domain::PersonId& id = played.people[person].id;
  KnownSoFar& known = now_.people.at(id);
  const std::vector<body::Normals> drawn = drawn_of(id);
  body::Learned learned;
  std::vector<body::ScoreSeen> teaching;
  std::vector<PieceKey> pieces;
  TaughtBy taught{.date = year_month_day{session.first}, .board = session.second, .scores = {}, .moved = {}};
  for (const MatchedScore& score : own) {
    body::ScoreSeen seen{.seen = log_of(score.value),
                         .forecasts = forecasts_of(played, person, score.piece->piece),
                         .level = level_of(known, score.key),
                         .day_sd = score.piece->sd_day / std::max(least_score, score.piece->score.p50),
                         .beyond = score.beyond};
    learned = body::learn(known.now, drawn, std::span(&seen, 1));
    keep(score, learned.lessons.front(), ++known.seen);
    if (!score.teaches) continue;
    teaching.push_back(std::move(seen));
    pieces.push_back(score.key);
    taught.scores.push_back(score.entry->text);
  }
  if (teaching.empty()) return;
  known.taught += static_cast<int>(teaching.size());
  const body::Normals before = known.now.body.parameters.mean;
  if (own.size() > 1) learned = body::learn(known.now, drawn, teaching);
  for (std::size_t i = 0; i < pieces.size(); ++i) known.levels[pieces[i]] = learned.lessons[i].level;
  known.now = std::move(learned.after);
  for (std::size_t i = 0; i < before.size(); ++i)
    taught.moved.at(i) = known.now.body.parameters.mean.at(i) - before.at(i);
  known.taught_by.push_back(std::move(taught));
}

void Learner::keep(const MatchedScore& score, const body::Lesson& lesson, int nth) {
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
  if (const auto last = now_.last.find({score.entry->person, score.key}); last != now_.last.end())
    out.last = last->second;
  if (const auto group = now_.group.find(score.key); group != now_.group.end())
    out.group = base::quantile(group->second, .5);
  if (score.beyond) return;
  now_.forecasts.push_back(std::move(out));
}

void Learner::keep_works(const ClassRehearsal& played, const std::string& board) {
  for (std::size_t i = 0; i < played.timetable.pieces.size(); ++i)
    if (const auto* block = domain::find_block(played.fitted.board, played.timetable.pieces[i].block))
      now_.works.try_emplace({board, static_cast<int>(i)}, work_of(*block));
}

/// What the next session's plain guesses are made of.
void Learner::remember(const ClassRehearsal& played, const Entries& entries, const SessionKey& session) {
  for (std::size_t p = 0; p < played.people.size(); ++p)
    for (const ScoreEntry* entry : entries)
      for (const PieceOutcome& piece : played.rehearsal.people[p].pieces) {
        if (entry->person != played.people[p].id || entry->flag != domain::DayFlag::None) continue;
        if (!is_of_piece(*entry, piece, played.rehearsal.piece_names)) continue;
        const auto value = score_in_measure(entry->value, piece);
        if (!value || *value <= 0) continue;
        const PieceKey key{session.second, piece.piece, versions_done(played.fitted.people[p])};
        now_.last[{entry->person, key}] = *value;
        now_.group[key].push_back(*value);
      }
}

}  // namespace repwright::app
