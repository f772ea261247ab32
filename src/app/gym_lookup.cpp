#include "app/gym_lookup.hpp"

namespace repwright::app {

base::Result<const domain::GymClass*> class_called(const OpenGym& gym, const std::string& id) {
  const auto known = gym.classes.find(id);
  if (known == gym.classes.end())
    return base::failure(base::ErrorCode::NotFound, "no class is called `" + id + "`");
  return &known->second;
}

base::Result<const std::string*> chalk_of(const OpenGym& gym, const domain::GymClass& gym_class) {
  const auto board = gym.knowledge.boards.find(gym_class.board_id);
  if (board == gym.knowledge.boards.end())
    return base::failure(base::ErrorCode::NotFound, "no board is called `" + gym_class.board_id + "`");
  return &board->second;
}

}  // namespace repwright::app
