#include "app/repair_class.hpp"

#include <utility>

#include "advice/consequences.hpp"
#include "advice/edits.hpp"
#include "advice/repairs.hpp"
#include "app/chalk_edit.hpp"
#include "app/class_targets.hpp"
#include "app/cut_list.hpp"
#include "app/hall_notes.hpp"
#include "app/other_board.hpp"
#include "app/parallel.hpp"

namespace repwright::app {
namespace {

constexpr double mostly = 0.5;  // of runs over the end, from which on a cut list is worth its length

}  // namespace

base::Result<domain::RepairPlan> repair_class(const ClassRequest& request, std::string_view text,
                                              const std::function<void(int done, int of)>& progress) {
  const auto gathered = gather(request);
  if (!gathered) return tl::unexpected(gathered.error());
  const advice::Halving halving{.last_runs = request.runs, .progress = progress};
  const auto before =
      rehearse_class(with_board(request, request.reading, request.gym, halving.first_runs), *gathered);
  if (!before) return tl::unexpected(before.error());

  const board::Reader reader(request.gym.catalogue, request.gym.house);
  const Chalkboard on{text, request.reading, reader, request.gym.catalogue, request.gym.house};
  auto targets = class_targets(request, *gathered, before->timetable, on);
  if (!targets) return tl::unexpected(targets.error());
  std::vector<domain::Edit> edits = advice::edits_of({.board = request.reading.board,
                                                      .timetable = before->timetable,
                                                      .catalogue = request.gym.catalogue,
                                                      .before = before->rehearsal,
                                                      .hall = request.gym.hall,
                                                      .house = request.gym.house,
                                                      .targets = *targets});
  const auto trial = [&](const domain::Board& board, int runs) -> base::Result<domain::Consequences> {
    if (&board == &request.reading.board && runs == halving.first_runs)  // rehearsed above
      return advice::consequences_of(before->rehearsal, advice::piece_blocks(board, before->timetable));
    const board::Reading reading = reading_of(board);
    const auto rehearsed = rehearse_class(with_board(request, reading, request.gym, runs), *gathered);
    if (!rehearsed) return tl::unexpected(rehearsed.error());
    return advice::consequences_of(rehearsed->rehearsal, advice::piece_blocks(board, rehearsed->timetable));
  };
  // What cannot be chalked so that it reads as meant is no change that a coach could make.
  std::vector<domain::Edit> chalkable;
  for (domain::Edit& edit : edits) {
    auto chalked = chalk_edit(edit, on);
    if (!chalked) continue;
    edit.text = std::move(chalked->text);
    edit.lines = std::move(chalked->lines);
    edit.rewritten = chalked->rewritten;
    chalkable.push_back(std::move(edit));
  }
  const rehearsal::ForEach for_each = in_parallel(request.threads);
  const domain::ClassOutcome& hour = before->rehearsal.timetable;
  if (hour.planned_s && hour.over_share > mostly) {
    auto cuts = cut_list(on, *hour.planned_s, trial, for_each);
    if (!cuts && cuts.error().code != base::ErrorCode::Stopped) return tl::unexpected(cuts.error());
    const std::optional<domain::Edit> what_to_cut = cuts ? std::move(*cuts) : std::nullopt;
    if (what_to_cut) chalkable.push_back(*what_to_cut);
  }
  auto plan = advice::best_repairs(request.reading.board, chalkable, trial, halving, for_each);
  if (!plan) return plan;
  plan->targets = std::move(*targets);
  plan->notes = hall_notes(request.gym.hall, before->rehearsal);
  return plan;
}

base::Result<domain::RepairPlan> repair_what_if(const GymAtHand& at_hand, const board::Reading& reading,
                                                std::string_view text, const WhatIf& what) {
  const auto gym_class = class_under(at_hand.gym(), what);
  if (!gym_class) return tl::unexpected(gym_class.error());
  return repair_class(knowing_request(at_hand, reading, *gym_class, what).request, text);
}

}  // namespace repwright::app
