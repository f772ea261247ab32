#include "app/briefing.hpp"

#include <cmath>
#include <sstream>

#include "base/require.hpp"
#include "board/words.hpp"

namespace repwright::app {

base::Duration briefing_length(const std::vector<std::string>& sentences, int words_per_minute) {
  base::require(words_per_minute > 0, "a coach speaks at some pace");
  int words = 0;
  for (const std::string& sentence : sentences) {
    std::istringstream stream(sentence);
    for (std::string word; stream >> word;) ++words;
  }
  constexpr double step_s = 10;
  return std::ceil(words * 60.0 / words_per_minute / step_s) * step_s * base::second;
}

void brief_at(domain::GymClass& gym_class, int words_per_minute, const domain::Board& board,
              const GymKnowledge& gym) {
  if (!gym_class.boxes.briefing)
    gym_class.boxes.briefing =
        briefing_length(board::in_words(board, gym.catalogue, gym.house), words_per_minute);
}

}  // namespace repwright::app
