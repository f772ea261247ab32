#include "app/score_form.hpp"

#include <algorithm>
#include <set>

#include "app/done_pieces.hpp"
#include "app/gym_lookup.hpp"
#include "app/most_reps.hpp"
#include "app/past_session.hpp"
#include "app/said_versions.hpp"
#include "board/usual_score.hpp"
#include "board/words.hpp"
#include "domain/board_search.hpp"
#include "rehearsal/groups.hpp"

namespace repwright::app {
namespace {

using base::Result;
using domain::Measure;
using domain::Score;

constexpr double widest_share = 0.25;

/// The rehearsal and the reading that a form is made from.
struct Played {
  const board::Reading& reading;
  const ClassRehearsal& class_rehearsal;
  const domain::GymClass& gym_class;
  const GymKnowledge& knowledge;
};

ScoreForm form_of(const domain::PieceOutcome& outcome, Score score) {
  switch (outcome.measure) {
    case Measure::Seconds:
      return ScoreForm::Time;
    case Measure::Kilograms:
      return ScoreForm::Load;
    case Measure::Metres:
      return ScoreForm::Distance;
    case Measure::Kilocalories:
      return ScoreForm::Kcal;
    case Measure::Reps:
      break;
  }
  return score == Score::RoundsReps && outcome.reps_per_round >= 1 ? ScoreForm::Rounds : ScoreForm::Reps;
}

bool is_sum(Score score) {
  return score == Score::Times || score == Score::RepsSum || score == Score::KcalSum ||
         score == Score::DistanceSum;
}

/// Sets that nobody loads and nobody times: work of skill, whose seconds say nothing.
bool is_unscored(const domain::Block& block, Score score, const domain::PieceOutcome& outcome) {
  const bool sets = block.kind == domain::BlockKind::Sets || block.kind == domain::BlockKind::Superset;
  return sets && score == Score::None && outcome.measure == Measure::Seconds;
}

/// The lines of one piece as the person does them: those that the outcome has steps of.
std::vector<domain::FittedItem> lines_in(const domain::FittedPerson& fitted,
                                         const domain::PieceOutcome& outcome) {
  std::vector<domain::FittedItem> lines;
  std::set<int> seen;
  for (const domain::StepTrace& step : outcome.steps) {
    const auto at = static_cast<std::size_t>(step.step.index);
    if (step.step.index < 0 || at >= fitted.items.size() || !seen.insert(step.step.index).second) continue;
    lines.push_back(fitted.items[at]);
  }
  std::ranges::sort(lines, {}, [](const domain::FittedItem& item) { return item.step.index; });
  return lines;
}

std::vector<std::vector<domain::PersonId>> partners_of(const domain::Block& block,
                                                       const std::vector<domain::Person>& people) {
  std::vector<std::vector<domain::PersonId>> with(people.size());
  if (block.team_sizes.empty()) return with;
  for (const rehearsal::Team& team : rehearsal::make_teams(static_cast<int>(people.size()), block.team_sizes))
    for (const int one : team.people)
      for (const int other : team.people)
        if (one != other)
          with[static_cast<std::size_t>(one)].push_back(people[static_cast<std::size_t>(other)].id);
  return with;
}

/// How long after the signal of their heat somebody at that place begins.
base::Duration start_at(const timetable::Piece& piece, int place) {
  if (!piece.stagger) return {};
  const int together_before = place / std::max(1, piece.stagger->people);
  return piece.stagger->every * together_before;
}

const domain::PieceOutcome* outcome_of(const domain::PersonOutcome& person, int piece) {
  const auto found = std::ranges::find(person.pieces, piece, &domain::PieceOutcome::piece);
  return found == person.pieces.end() ? nullptr : &*found;
}

std::optional<FormPiece> form_piece(const Played& played, int index) {
  const ClassRehearsal& done = played.class_rehearsal;
  const timetable::Piece& piece = done.timetable.pieces[static_cast<std::size_t>(index)];
  const domain::Block* block = domain::find_block(played.reading.board, piece.block);
  if (block == nullptr) return std::nullopt;
  const Score score = block->score.value_or(board::usual_score(*block));
  const auto with = partners_of(*block, done.people);
  const auto where = rehearsal::standings(*block, piece.heats, late_in(played.gym_class, done.people));
  FormPiece form{.index = index,
                 .piece = {},
                 .title = piece.name,
                 .scheme = board::scheme_in_words(*block, played.knowledge.catalogue, played.knowledge.house),
                 .cap = piece.cap,
                 .heats = where.heats,
                 .lanes = block->lanes.has_value(),
                 .people = {}};
  for (std::size_t p = 0; p < done.people.size(); ++p) {
    const domain::PieceOutcome* outcome = outcome_of(done.rehearsal.people[p], index);
    if (outcome == nullptr || is_unscored(*block, score, *outcome)) continue;
    form.form = form_of(*outcome, score);
    if (is_sum(score)) form.parts = std::max(form.parts, static_cast<int>(outcome->interval_s.size()));
    const auto [least, most] = believed(outcome->score);
    const std::vector<domain::FittedItem> lines = lines_in(done.fitted.people[p], *outcome);
    const std::string versions =
        versions_done({.person = done.people[p].id, .level = {}, .items = lines, .rounds = {}});
    FormPerson one{.person = done.people[p].id,
                   .name = done.people[p].name,
                   .lines = lines,
                   .done_as = versions,
                   .said_as = said_versions(versions, played.knowledge.catalogue),
                   .with = with[p],
                   .forecast = *outcome,
                   .standing = where.people[p],
                   .start = start_at(piece, where.people[p].place),
                   .least = least,
                   .most = most};
    if (form.form == ScoreForm::Reps) one.holds = most_reps(*block, piece, lines);
    if (form.form == ScoreForm::Load)
      one.loads = load_steps(lines, played.knowledge.catalogue, played.knowledge.hall);
    one.forecast.steps.clear();
    form.people.push_back(std::move(one));
  }
  if (form.people.empty()) return std::nullopt;
  return form;
}

}  // namespace

std::vector<double> late_in(const domain::GymClass& gym_class, const std::vector<domain::Person>& people) {
  std::vector<double> late(people.size());
  for (std::size_t p = 0; p < people.size(); ++p) {
    const auto at = std::ranges::find(gym_class.arrivals, people[p].id, &domain::Arrival::person);
    if (at != gym_class.arrivals.end()) late[p] = at->late.si();
  }
  return late;
}

std::pair<double, double> believed(const domain::Spread& forecast) {
  const double margin = std::max(forecast.p90 - forecast.p10, widest_share * forecast.p50);
  return {std::max(0.0, forecast.p10 - margin), forecast.p90 + margin};
}

Result<std::vector<FormPiece>> score_form(const GymAtHand& at_hand, const std::string& class_id,
                                          const std::stop_token& stop) {
  const OpenGym& gym = at_hand.gym();
  const auto known = class_called(gym, class_id);
  if (!known) return tl::unexpected(known.error());
  const auto chalk = chalk_of(gym, **known);
  if (!chalk) return tl::unexpected(chalk.error());
  const board::Reading reading = at_hand.read(**chalk);
  const WhatIf as_it_is{.class_id = class_id, .heads = {}, .out = {}, .runs = 100, .stop = stop};
  const auto rehearsed = rehearse_what_if(at_hand, reading, as_it_is);
  if (!rehearsed) return tl::unexpected(rehearsed.error());
  std::vector<FormPiece> pieces;
  for (std::size_t i = 0; i < rehearsed->timetable.pieces.size(); ++i)
    if (auto piece = form_piece({reading, *rehearsed, **known, gym.knowledge}, static_cast<int>(i)))
      pieces.push_back(std::move(*piece));
  if (rehearsed->timetable.pieces.size() > 1)
    for (FormPiece& piece : pieces) piece.piece = piece.title;
  return pieces;
}

}  // namespace repwright::app
