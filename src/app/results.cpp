#include "app/results.hpp"

#include <algorithm>
#include <numbers>
#include <tuple>

#include "app/past_session.hpp"
#include "app/said_versions.hpp"
#include "app/score_form.hpp"
#include "domain/people_search.hpp"

namespace repwright::app {
namespace {

using base::Result;
using domain::ScoreEntry;

constexpr double two_sided_95 = 1.96;

bool is_better(domain::Measure measure, double a, double b) {
  return measure == domain::Measure::Seconds ? a < b : a > b;
}

bool is_in(const ScoreEntry& entry, const FormPiece& piece) {
  return piece.piece.empty() || entry.piece.empty() || entry.piece == piece.piece;
}

/// The person's best before that day, of the same piece done in the same version.
std::optional<double> best_before(const std::vector<ScoreEntry>& sheet, const ScoreEntry& now,
                                  const FormPiece& piece, const domain::PieceOutcome& outcome) {
  std::optional<double> best;
  for (const ScoreEntry& each : sheet) {
    const bool same = each.person == now.person && each.board_id == now.board_id && is_in(each, piece) &&
                      each.version == now.version;
    if (!same || std::chrono::sys_days{each.date} >= std::chrono::sys_days{now.date}) continue;
    const auto value = score_in_measure(each.value, outcome);
    if (value && (!best || is_better(outcome.measure, *value, *best))) best = value;
  }
  return best;
}

OwnBest own_best(const ResultLine& line, domain::Measure measure) {
  if (!line.value) return OwnBest::Unknown;
  if (!line.best_before) return OwnBest::First;
  const double gain =
      measure == domain::Measure::Seconds ? *line.best_before - *line.value : *line.value - *line.best_before;
  if (gain > line.noise) return OwnBest::Beyond;
  return gain < -line.noise ? OwnBest::Below : OwnBest::WithinNoise;
}

/// The newest entry of each person in that piece of that class.
std::vector<const ScoreEntry*> newest(const std::vector<domain::KeptScore>& scores,
                                      const std::string& class_id, const FormPiece& piece) {
  std::vector<const ScoreEntry*> out;
  for (const domain::KeptScore& kept : scores) {
    if (kept.entry.class_id != class_id || !is_in(kept.entry, piece)) continue;
    std::erase_if(out, [&](const ScoreEntry* each) { return each->person == kept.entry.person; });
    out.push_back(&kept.entry);
  }
  return out;
}

ResultLine line_of(const ScoreEntry& entry, const FormPiece& piece, const OpenGym& gym) {
  const domain::Person* person = domain::find_person(gym.people, entry.person);
  ResultLine line{.person = entry.person,
                  .name = person == nullptr ? entry.person.text : person->name,
                  .score = entry.text,
                  .done_as = entry.version,
                  .said_as = said_versions(entry.version, gym.knowledge.catalogue),
                  .value = {},
                  .best_before = {}};
  const auto form = std::ranges::find(piece.people, entry.person, &FormPerson::person);
  if (form == piece.people.end()) return line;
  line.value = score_in_measure(entry.value, form->forecast);
  line.noise = noise_of(form->forecast.sd_day);
  line.best_before = best_before(gym.knowledge.scores, entry, piece, form->forecast);
  line.own = own_best(line, form->forecast.measure);
  return line;
}

}  // namespace

double noise_of(double sd_day) {
  return two_sided_95 * std::numbers::sqrt2 * sd_day;
}

Result<std::vector<PieceResults>> class_results(const GymAtHand& at_hand, const std::string& class_id,
                                                const std::vector<domain::KeptScore>& scores,
                                                const std::stop_token& stop) {
  const auto form = score_form(at_hand, class_id, stop);
  if (!form) return tl::unexpected(form.error());
  std::vector<PieceResults> out;
  for (const FormPiece& piece : *form) {
    PieceResults results{.piece = piece.title,
                         .measure = piece.people.front().forecast.measure,
                         .reps_per_round = piece.people.front().forecast.reps_per_round,
                         .lines = {}};
    for (const ScoreEntry* entry : newest(scores, class_id, piece))
      results.lines.push_back(line_of(*entry, piece, at_hand.gym()));
    std::ranges::sort(results.lines, {}, [](const ResultLine& line) {
      return std::tuple(line.own != OwnBest::Beyond, line.name, line.person);
    });
    out.push_back(std::move(results));
  }
  return out;
}

}  // namespace repwright::app
