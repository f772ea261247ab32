#include "app/open_gym.hpp"

#include <utility>

namespace repwright::app {

void OpenGym::chalk(const std::string& board_id, const std::string& text) {
  boards[board_id] = text;
  knowledge.boards[board_id] = text;
}

OpenGym open_gym(store::KeptGym kept, domain::Catalogue catalogue, body::Constants constants) {
  store::GymFolder& gym = kept.gym;
  OpenGym open;
  open.knowledge = {std::move(catalogue), std::move(constants),  std::move(gym.house),
                    std::move(gym.hall),  std::move(gym.scores), gym.boards};
  open.people = std::move(gym.people);
  open.boards = std::move(gym.boards);
  open.classes = std::move(gym.classes);
  open.versions = std::move(kept.versions);
  return open;
}

}  // namespace repwright::app
