#include "app/team_pace.hpp"

#include <algorithm>
#include <cmath>

#include "app/lone_piece.hpp"
#include "app/other_board.hpp"
#include "domain/board_search.hpp"

namespace repwright::app {
namespace {

constexpr int alone_runs = 24;
constexpr double usual_seconds = 600;  // of a piece whose length nobody knows

/// Of the time at the lines, the share at those that everybody does for themselves.
double own_share(const domain::PieceOutcome& done, const domain::Board& board) {
  double own = 0;
  double all = 0;
  for (const domain::StepTrace& step : done.steps) {
    const double seconds = (step.end_s - step.start_s) * step.share_of_runs;
    const domain::Item* line = domain::find_item(board, step.step);
    all += seconds;
    if (line != nullptr && line->share.value_or(domain::Share::Total) != domain::Share::Total) own += seconds;
  }
  return all > 0 ? own / all : 0;
}

}  // namespace

std::vector<double> middle_ends(const domain::Rehearsal& rehearsal, std::size_t piece,
                                const domain::Block& block) {
  std::vector<double> ends;
  double sum = 0;
  for (const domain::PersonOutcome& person : rehearsal.people) {
    ends.push_back(std::max(0.01, person.pieces.at(piece).score.p50));
    sum += ends.back();
  }
  if (rehearsal.people.at(0).pieces.at(piece).measure == domain::Measure::Seconds) return ends;
  const double mean = sum / static_cast<double>(ends.size());
  const double length = block.duration ? block.duration->si() : usual_seconds;
  for (double& end : ends) end = length * mean / end;
  return ends;
}

base::Result<TeamPace> team_pace(const ClassRequest& request, const Gathered& gathered,
                                 const domain::Block& piece) {
  const board::Reading reading = reading_of({.title = {}, .blocks = {lone_piece(piece)}});
  GymKnowledge gym = request.gym;
  gym.hall = {};
  const auto rehearsed = rehearse_class(with_board(request, reading, gym, alone_runs), gathered);
  if (!rehearsed) return tl::unexpected(rehearsed.error());
  const std::vector<double> ends = middle_ends(rehearsed->rehearsal, 0, piece);
  TeamPace pace;
  for (std::size_t p = 0; p < ends.size(); ++p) {
    const bool turns = piece.work_mode.has_value();
    const double own = turns ? 0 : own_share(rehearsed->rehearsal.people[p].pieces.at(0), {{}, {piece}});
    pace.shared.push_back(std::max(1.0, ends[p] * (1 - own)));
    pace.own.push_back(ends[p] * own);
  }
  return pace;
}

}  // namespace repwright::app
