#pragma once

#include "app/rehearse_class.hpp"
#include "domain/board.hpp"

/// The same question about a board that nobody chalked.
namespace repwright::app {

/// The request for another reading, on the thread that asks; all three must outlive the answer.
ClassRequest with_board(const ClassRequest& request, const board::Reading& reading, const GymKnowledge& gym,
                        int runs);

/// As if the board had been read, from no text.
board::Reading reading_of(domain::Board board);

}  // namespace repwright::app
