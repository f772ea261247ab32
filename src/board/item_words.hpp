#pragma once

#include <string>
#include <vector>

#include "domain/board.hpp"
#include "domain/catalogue.hpp"
#include "domain/house.hpp"

namespace repwright::board {

/// What a sentence needs to know beside the line of work.
struct Telling {
  const domain::Catalogue& catalogue;
  const domain::House& house;
  std::vector<std::string> levels = {};
};

/// `kettlebell swing` or `kettlebell swings`; the words of the board where the catalogue has none.
std::string spoken(const domain::MovementId& movement, const Telling& telling, double count);

/// `6 kg`, `24 or 16 kg`, `24/16/12 kg` by level, in the house's unit.
std::string load_words(const domain::Loads& loads, const domain::House& house);

/// `14 kettlebell swings with 24 or 16 kg`.
std::string item_words(const domain::Item& item, const Telling& telling);

/// Each line of work; one name for neighbours that share a list of counts.
std::vector<std::string> items_words(const std::vector<domain::Item>& items, const Telling& telling);

/// The same without the amount, where the clock gives it.
std::string bare_words(const domain::Item& item, const Telling& telling);

/// The name alone, as on a station: `ring rows`, `farmer carry`.
std::string station_words(const domain::Item& item, const Telling& telling);

}  // namespace repwright::board
