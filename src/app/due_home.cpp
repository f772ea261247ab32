#include "app/due_home.hpp"

#include <algorithm>
#include <cmath>

#include "app/gym_lookup.hpp"
#include "app/score_form.hpp"
#include "base/statistics.hpp"
#include "domain/board_search.hpp"
#include "timetable/timetable.hpp"

namespace repwright::app {
namespace {

using base::Result;

constexpr int runs = 100;
constexpr double share_home_at_call = 0.9;
constexpr double longest_wait_s = 60;  // as a last call gives

/// When each of a heat is home, in order, per run.
using Homecomings = std::vector<std::vector<double>>;

double middle_over_runs(const Homecomings& runs_of_heat, std::size_t place, double share) {
  std::vector<double> at_place;
  at_place.reserve(runs_of_heat.size());
  for (const std::vector<double>& run : runs_of_heat) at_place.push_back(run.at(place));
  return base::quantile(at_place, share);
}

DueHome due_of(int piece, int heat, const Homecomings& runs_of_heat) {
  const std::size_t people = runs_of_heat.front().size();
  DueHome due{.piece = piece, .heat = heat, .people = static_cast<int>(people), .call_s = {}};
  due.first_s = middle_over_runs(runs_of_heat, 0, .5);
  due.middle_s = middle_over_runs(runs_of_heat, (people - 1) / 2, .5);
  due.last_s = middle_over_runs(runs_of_heat, people - 1, .5);
  due.last_late_s = middle_over_runs(runs_of_heat, people - 1, .9);
  const auto home = static_cast<std::size_t>(std::floor(share_home_at_call * static_cast<double>(people)));
  if (home == 0 || home == people) return due;
  const double call = middle_over_runs(runs_of_heat, home - 1, .5);
  if (due.last_s - call <= longest_wait_s) return due;
  due.call_s = call;
  due.out_at_call = static_cast<int>(people - home);
  return due;
}

/// Per heat, of the people whom the draws tell of.
std::vector<Homecomings> homecomings(const ClassRehearsal& done, int piece,
                                     const rehearsal::Standings& where) {
  std::vector<Homecomings> heats(static_cast<std::size_t>(where.heats),
                                 Homecomings(static_cast<std::size_t>(done.rehearsal.runs)));
  for (const domain::Draw& draw : done.rehearsal.draws) {
    if (draw.piece != piece) continue;
    const auto heat = static_cast<std::size_t>(where.people.at(static_cast<std::size_t>(draw.person)).heat);
    heats.at(heat).at(static_cast<std::size_t>(draw.run)).push_back(draw.score);
  }
  for (Homecomings& heat : heats)
    for (std::vector<double>& run : heat) std::ranges::sort(run);
  return heats;
}

/// Whether people are home when they are done, and that is what is scored.
bool ends_at_home(const ClassRehearsal& done, int piece) {
  if (done.timetable.pieces[static_cast<std::size_t>(piece)].clock != timetable::ClockKind::Up) return false;
  return std::ranges::any_of(done.rehearsal.people, [&](const domain::PersonOutcome& person) {
    return std::ranges::any_of(person.pieces, [&](const domain::PieceOutcome& outcome) {
      return outcome.piece == piece && outcome.measure == domain::Measure::Seconds &&
             outcome.interval_s.size() <= 1;
    });
  });
}

}  // namespace

Result<std::vector<DueHome>> due_home(const GymAtHand& at_hand, const std::string& class_id,
                                      const std::stop_token& stop) {
  const OpenGym& gym = at_hand.gym();
  const auto known = class_called(gym, class_id);
  if (!known) return tl::unexpected(known.error());
  const auto chalk = chalk_of(gym, **known);
  if (!chalk) return tl::unexpected(chalk.error());
  const board::Reading reading = at_hand.read(**chalk);
  const auto done = rehearse_what_if(
      at_hand, reading,
      {.class_id = class_id, .heads = {}, .out = {}, .runs = runs, .stop = stop, .keep_draws = true});
  if (!done) return tl::unexpected(done.error());
  std::vector<DueHome> out;
  const std::vector<double> late = late_in(**known, done->people);
  for (std::size_t i = 0; i < done->timetable.pieces.size(); ++i) {
    const timetable::Piece& piece = done->timetable.pieces[i];
    const domain::Block* block = domain::find_block(reading.board, piece.block);
    const int index = static_cast<int>(i);
    if (block == nullptr || !ends_at_home(*done, index)) continue;
    const auto heats = homecomings(*done, index, rehearsal::standings(*block, piece.heats, late));
    for (std::size_t heat = 0; heat < heats.size(); ++heat)
      if (!heats[heat].empty() && !heats[heat].front().empty())
        out.push_back(due_of(index, static_cast<int>(heat), heats[heat]));
  }
  return out;
}

}  // namespace repwright::app
