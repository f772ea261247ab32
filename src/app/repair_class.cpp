#include "app/repair_class.hpp"

#include <utility>

#include "advice/consequences.hpp"
#include "advice/edits.hpp"
#include "advice/repairs.hpp"
#include "app/chalk_edit.hpp"
#include "app/parallel.hpp"

namespace repwright::app {
namespace {

/// The same request for another board, on the thread that asks.
ClassRequest with_board(const ClassRequest& request, const board::Reading& reading, int runs) {
  return {.reading = reading,
          .gym = request.gym,
          .people = request.people,
          .gym_class = request.gym_class,
          .heads = request.heads,
          .rule = request.rule,
          .seed = request.seed,
          .runs = runs,
          .threads = 1,
          .stop = request.stop,
          .bodies = request.bodies};
}

}  // namespace

base::Result<domain::RepairPlan> repair_class(const ClassRequest& request, std::string_view text) {
  const auto gathered = gather(request);
  if (!gathered) return tl::unexpected(gathered.error());
  const advice::Halving halving{.last_runs = request.runs};
  const auto before = rehearse_class(with_board(request, request.reading, halving.first_runs), *gathered);
  if (!before) return tl::unexpected(before.error());

  const board::Reader reader(request.gym.catalogue, request.gym.house);
  const Chalkboard on{text, request.reading, reader, request.gym.catalogue, request.gym.house};
  std::vector<domain::Edit> edits = advice::edits_of({.board = request.reading.board,
                                                      .timetable = before->timetable,
                                                      .catalogue = request.gym.catalogue,
                                                      .before = before->rehearsal});
  const auto trial = [&](const domain::Board& board, int runs) -> base::Result<domain::Consequences> {
    const board::Reading reading{.board = board, .steps = {}, .blocks = {}, .rules = {}, .diagnostics = {}};
    const auto rehearsed = rehearse_class(with_board(request, reading, runs), *gathered);
    if (!rehearsed) return tl::unexpected(rehearsed.error());
    return advice::consequences_of(rehearsed->rehearsal);
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
  return advice::best_repairs(request.reading.board, std::move(chalkable), trial, halving,
                              in_parallel(request.threads));
}

base::Result<domain::RepairPlan> repair_what_if(const GymAtHand& at_hand, const board::Reading& reading,
                                                std::string_view text, const WhatIf& what) {
  const auto gym_class = class_under(at_hand.gym(), what);
  if (!gym_class) return tl::unexpected(gym_class.error());
  return repair_class(knowing_request(at_hand, reading, *gym_class, what).request, text);
}

}  // namespace repwright::app
