#pragma once

#include <map>

#include "app/rehearse_class.hpp"
#include "base/result.hpp"
#include "domain/board.hpp"
#include "domain/ids.hpp"

namespace repwright::app {

/// What one person does on a line; a pass is one time at it. Counted over the mean of the runs.
struct LineWork {
  double seconds = 0;
  double passes = 0;
  domain::MovementId done;
};
/// What a board asks of one person alone on an empty floor.
struct LoneWork {
  std::map<domain::StepId, LineWork> lines;
  double class_s = 0;  // from the first start signal to the end, half of the runs are longer
};

/// Of the board as it stands. Fails as a rehearsal does.
base::Result<LoneWork> lone_work(const ClassRequest& request, const domain::Person& person,
                                 const domain::Board& board);

/// The board without its caps: who is stopped by one does the rest of the lines all the same.
domain::Board without_caps(domain::Board board);

/// The board made shorter to that share of itself: clocks in half minutes, rounds whole, and what the rounds
/// cannot give from the counts. What it intends shrinks with it.
domain::Board cut_to(domain::Board board, double share);

}  // namespace repwright::app
