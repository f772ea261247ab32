#include "app/other_board.hpp"

#include <utility>

namespace repwright::app {

ClassRequest with_board(const ClassRequest& request, const board::Reading& reading, const GymKnowledge& gym,
                        int runs) {
  return {.reading = reading,
          .gym = gym,
          .people = request.people,
          .gym_class = request.gym_class,
          .heads = request.heads,
          .rule = request.rule,
          .seed = request.seed,
          .runs = runs,
          .threads = 1,
          .stop = request.stop,
          .bodies = request.bodies,
          .known = request.known};
}

board::Reading reading_of(domain::Board board) {
  return {.board = std::move(board), .steps = {}, .blocks = {}, .rules = {}, .diagnostics = {}};
}

}  // namespace repwright::app
