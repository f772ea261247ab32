#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/catalogue.hpp"
#include "domain/house.hpp"

namespace repwright::store {

struct HouseFile {
  domain::House house;
  std::vector<std::string> notes;  // keys that were left out
};

/// A house file (docs/guide/gym-folder.md); what it does not say is the default. Fails with Invalid, naming
/// everything that is wrong by JSON pointer.
base::Result<HouseFile> read_house(std::string_view bytes, const std::string& file,
                                   const domain::Catalogue& catalogue);

/// The file that `read_house` reads as this house, every default written out.
std::string write_house(const domain::House& house);

}  // namespace repwright::store
