#include "app/repair_class.hpp"

#include <utility>

#include "advice/consequences.hpp"
#include "advice/edits.hpp"
#include "advice/repairs.hpp"
#include "app/chalk_edit.hpp"
#include "app/hall_notes.hpp"
#include "app/other_board.hpp"
#include "app/parallel.hpp"

namespace repwright::app {
base::Result<domain::RepairPlan> repair_class(const ClassRequest& request, std::string_view text) {
  const auto gathered = gather(request);
  if (!gathered) return tl::unexpected(gathered.error());
  const advice::Halving halving{.last_runs = request.runs};
  const auto before =
      rehearse_class(with_board(request, request.reading, request.gym, halving.first_runs), *gathered);
  if (!before) return tl::unexpected(before.error());

  const board::Reader reader(request.gym.catalogue, request.gym.house);
  const Chalkboard on{text, request.reading, reader, request.gym.catalogue, request.gym.house};
  std::vector<domain::Edit> edits = advice::edits_of({.board = request.reading.board,
                                                      .timetable = before->timetable,
                                                      .catalogue = request.gym.catalogue,
                                                      .before = before->rehearsal,
                                                      .hall = request.gym.hall,
                                                      .house = request.gym.house});
  const auto trial = [&](const domain::Board& board, int runs) -> base::Result<domain::Consequences> {
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
    edit.line = chalked->line;
    chalkable.push_back(std::move(edit));
  }
  auto plan = advice::best_repairs(request.reading.board, std::move(chalkable), trial, halving,
                                   in_parallel(request.threads));
  if (plan) plan->notes = hall_notes(request.gym.hall, before->rehearsal);
  return plan;
}

base::Result<domain::RepairPlan> repair_what_if(const GymAtHand& at_hand, const board::Reading& reading,
                                                std::string_view text, const WhatIf& what) {
  const auto gym_class = class_under(at_hand.gym(), what);
  if (!gym_class) return tl::unexpected(gym_class.error());
  return repair_class(knowing_request(at_hand, reading, *gym_class, what).request, text);
}

}  // namespace repwright::app
